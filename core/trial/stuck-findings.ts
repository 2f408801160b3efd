import { type Finding, proseFinding } from "../ground/finding.ts";
import { inPlateWords } from "../recording/plate-words.ts";
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
      const name = inPlateWords(plates[plate]?.name ?? "");
      const where = `${name}, ${(span.start / rateHz).toFixed(3)} s to ${(span.end / rateHz).toFixed(3)} s`;
      const count = span.end - span.start;
      const place = span.end <= cut.flight.start ? "before the athlete was weighed" : "in or after the landing";
      const cost = refuses ? "so no velocity can be made" : place;
      return kind === "lost"
        ? proseFinding(
            "samples-lost",
            refuses ? "refusal" : "warning",
            `The loaded ${name} falls to ${newtons.toFixed(0)} N from one sample to the next, stays there for ${count} samples and comes back as suddenly: these samples are missing, ${cost}.`,
            "Check the cable and the transmission, then record again.",
            { where },
          )
        : proseFinding(
            "samples-held",
            refuses ? "refusal" : "warning",
            `The loaded ${name} repeats ${newtons.toFixed(1)} N for ${count} samples, which its own noise forbids: these samples were not measured, ${cost}.`,
            "Check the transmission and the export, then record again.",
            { where },
          );
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
