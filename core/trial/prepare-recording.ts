import { type Finding, isRefused } from "../ground/finding.ts";
import type { Recording } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import { brokenOffMovements } from "./broken-off.ts";
import { type ClippedSpan, clippedPlates } from "./clipping.ts";
import { converterStep } from "./converter-step.ts";
import { cutLandings } from "./cut-landings.ts";
import { cutJumps, type JumpCut } from "./cut-trials.ts";
import { type ForceSignal, totalForce } from "./force-signal.ts";
import { withOwnStanding } from "./own-standing.ts";
import { removePlateZero } from "./plate-zero.ts";
import type { SampleSpan } from "./sample-span.ts";
import { type LoadSegments, segmentLoad } from "./segment-load.ts";
import { signalFindings } from "./signal-findings.ts";
import { findSpikes } from "./spikes.ts";
import { type StuckSpan, stuckSpans } from "./stuck-samples.ts";

/** A recording cut into attempts, plate zeros removed. */
export interface PreparedRecording {
  readonly recording: Recording;
  /** Force of each plate with its zero removed, newtons. */
  readonly forces: readonly Float64Array[];
  /** Standard uncertainty of each plate's zero, newtons. */
  readonly zeroUncertainties: readonly number[];
  readonly total: ForceSignal;
  readonly segments: LoadSegments;
  /** Attempts with a flight after a push. */
  readonly jumps: readonly JumpCut[];
  /** Falls onto the plate with no flight after them. */
  readonly landings: readonly JumpCut[];
  /** Movements from standing that never left the plate. */
  readonly brokenOff: readonly SampleSpan[];
  /** Stretches in which a plate's range was exceeded. */
  readonly clipped: readonly ClippedSpan[];
  /** Single samples that stand alone. */
  readonly spikes: readonly { readonly plate: number; readonly sample: number }[];
  /** Samples that were not measured: lost and filled, or held. */
  readonly stuck: readonly StuckSpan[];
  /** About the recording as a whole. */
  readonly findings: readonly Finding[];
}

/** Looks at a recording coarsely: load, quiet standing, plate zeros, attempts, exceeded range, spikes. */
export function prepareRecording(recording: Recording, settings: Settings): PreparedRecording {
  const { rateHz, plates } = recording;
  const raw = plates.map((plate) => plate.force);
  const recorded = totalForce(raw);
  const steps = raw.map((each) => converterStep(each) ?? 0);
  const segments = segmentLoad(recorded, rateHz, settings);
  const zeroed = removePlateZero(plates, steps, rateHz, segments.empty, settings);
  const force = totalForce(zeroed.forces);
  const input = { total: force, rateHz, segments, settings };
  const signal = signalFindings({ rateHz, force: recorded }, plates, steps, segments, settings);
  return {
    recording,
    forces: zeroed.forces,
    zeroUncertainties: zeroed.uncertainties,
    total: { rateHz, force },
    segments,
    jumps: cutJumps(input).map((cut) => withOwnStanding(cut, { rateHz, force }, segments, settings)),
    landings: cutLandings(input),
    brokenOff: brokenOffMovements(input),
    clipped: clippedPlates(raw, rateHz, segments, settings),
    spikes: raw.flatMap((each, plate) => findSpikes(each, settings).map((sample) => ({ plate, sample }))),
    stuck: stuckSpans(raw, steps, rateHz, segments, settings),
    findings: isRefused(signal) ? signal : [...signal, ...zeroed.findings],
  };
}
