import { type Finding, finding } from "../ground/finding.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * Samples of a trial that were not measured. Where its velocity is made from them they refuse it, as a gap does: from
 * standing up to the flight, after a fall up to the standing at the end.
 * @param still quiet standing from which velocity is counted
 */
export function stuckFindings(
  { recording, stuck }: PreparedRecording,
  cut: JumpCut,
  still: SampleSpan | undefined,
): readonly Finding[] {
  const { rateHz, plates } = recording;
  const moved = movement(cut, still);
  // Lost samples look like a flight of their own where one plate carries everything.
  const lostEnd = cut.kind === "standing" ? Math.min(cut.flight.end, cut.span.end) : moved.end;
  return stuck
    .filter(({ span }) => span.start < cut.span.end && span.end > cut.span.start)
    .map(({ plate, span, kind, newtons }) => {
      const refuses = span.start < (kind === "lost" ? lostEnd : moved.end) && span.end > moved.start;
      const severity = refuses ? "refusal" : "warning";
      const name = plates[plate]?.name ?? "";
      const cost = refuses ? "velocity" : span.end <= cut.flight.start ? "before weighing" : "in or after landing";
      const figures = { plate: name, newtons, samples: span.end - span.start, cost } as const;
      const fromSeconds = span.start / rateHz;
      const toSeconds = span.end / rateHz;
      const place = { at: "plate span", plate: name, fromSeconds, toSeconds, decimals: 3 } as const;
      return kind === "lost"
        ? finding("samples-lost", severity, figures, { place })
        : finding("samples-held", severity, figures, { place });
    });
}

function movement(cut: JumpCut, still: SampleSpan | undefined): SampleSpan {
  const { kind, contact, flight, quietBefore, quietAfter, landing } = cut;
  if (kind === "standing") {
    const stood = quietBefore.at(-1)?.start ?? contact.start;
    return { start: Math.min(stood, still?.start ?? stood), end: flight.start };
  }
  return { start: contact.start, end: Math.min(quietAfter.end, landing.end) };
}
