import { type Finding, finding } from "../finding.ts";
import type { Recording } from "../recording/recording.ts";
import type { Settings } from "../settings.ts";
import { clippedSpans } from "./clipping.ts";
import { cutJumps, type JumpCut } from "./cut-trials.ts";
import { type ForceSignal, totalForce } from "./force-signal.ts";
import { removePlateZero } from "./plate-zero.ts";
import type { SampleSpan } from "./sample-span.ts";
import { type LoadSegments, segmentLoad } from "./segment-load.ts";

/** A recording cut into jumps, plate zeros removed. */
export interface PreparedRecording {
  readonly recording: Recording;
  /** Force of each plate with its zero removed, newtons. */
  readonly forces: readonly Float64Array[];
  readonly total: ForceSignal;
  readonly segments: LoadSegments;
  readonly jumps: readonly JumpCut[];
  /** Stretches in which a plate's range was exceeded. */
  readonly clipped: readonly { readonly plate: number; readonly span: SampleSpan }[];
  /** About the recording as a whole; a refusal when it holds no jump. */
  readonly findings: readonly Finding[];
}

/** Looks at a recording coarsely: load, quiet standing, plate zeros, jumps, exceeded range. */
export function prepareRecording(recording: Recording, settings: Settings): PreparedRecording {
  const { rateHz, plates } = recording;
  const raw = plates.map((plate) => plate.force);
  const segments = segmentLoad(totalForce(raw), rateHz, settings);
  const zeroed = removePlateZero(plates, rateHz, segments.empty, settings);
  const force = totalForce(zeroed.forces);
  const jumps = cutJumps(force, rateHz, segments, settings);
  const clipped = raw.flatMap((each, plate) =>
    clippedSpans(each, segments.steadyLoad, settings).map((span) => ({ plate, span })),
  );
  return {
    recording,
    forces: zeroed.forces,
    total: { rateHz, force },
    segments,
    jumps,
    clipped,
    findings: jumps.length === 0 ? [...zeroed.findings, noJump(segments, rateHz, force.length)] : zeroed.findings,
  };
}

function noJump(segments: LoadSegments, rateHz: number, sampleCount: number): Finding {
  const seconds = (sampleCount / rateHz).toFixed(1);
  if (segments.steadyLoad === 0) {
    return finding(
      "no-quiet-standing",
      "refusal",
      `Nobody stands still on the plate in these ${seconds} s of recording.`,
      "Check the force unit and the columns; record two seconds of quiet standing before the jump.",
    );
  }
  return finding(
    "no-takeoff",
    "refusal",
    `The plate is never left after a push in these ${seconds} s of recording, so there is no jump.`,
    "Record the jump again, or leave this recording out.",
  );
}
