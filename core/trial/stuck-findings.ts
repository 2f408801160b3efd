import { type Finding, finding } from "../finding.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * Samples of a trial that were not measured. Where its velocity is made from them they refuse it, as a gap does: from
 * standing up to the flight, after a fall up to the standing at the end.
 */
export function stuckFindings({ recording, stuck }: PreparedRecording, cut: JumpCut): readonly Finding[] {
  const { rateHz, plates } = recording;
  const moved = movement(cut);
  return stuck
    .filter(({ span }) => span.start < cut.span.end && span.end > cut.span.start)
    .map(({ plate, span, kind, newtons }) => {
      const refuses = span.start < moved.end && span.end > moved.start;
      const where = `plate ${plates[plate]?.name ?? ""}, ${(span.start / rateHz).toFixed(3)} s to ${(span.end / rateHz).toFixed(3)} s`;
      const count = span.end - span.start;
      const cost = refuses ? "so no velocity can be made" : "which the landing's measures rest on";
      return kind === "lost"
        ? finding(
            "samples-lost",
            refuses ? "refusal" : "warning",
            `The loaded plate falls to ${newtons.toFixed(0)} N from one sample to the next, stays there for ${count} samples and comes back as suddenly: these samples are missing, ${cost}.`,
            "Check the cable and the transmission, then record again.",
            { where },
          )
        : finding(
            "samples-held",
            refuses ? "refusal" : "warning",
            `The loaded plate repeats ${newtons.toFixed(1)} N for ${count} samples, which its own noise forbids: these samples were not measured, ${cost}.`,
            "Check the transmission and the export, then record again.",
            { where },
          );
    });
}

function movement({ kind, contact, flight, quietBefore, quietAfter, landing }: JumpCut): SampleSpan {
  if (kind === "standing") return { start: quietBefore.at(-1)?.start ?? contact.start, end: flight.start };
  return { start: contact.start, end: Math.min(quietAfter.end, landing.end) };
}
