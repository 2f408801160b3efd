import type { JumpMotion } from "../events/jump-events.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { inPlateWords } from "../words/english/plate-words.ts";

/** Landing measures that rest on the force of the landing. */
export const landingForceMeasures = measureCatalogue
  .filter(
    (entry) =>
      entry.group === "landing" && entry.id !== "limbTouchdownDifference" && entry.id !== "timeToStabilisation",
  )
  .map((entry) => entry.id);

/**
 * What an exceeded measuring range costs: in the landing its measures, before take-off or in a drop landing the whole
 * trial, because velocity is integrated from the force that is missing. Repeated hops rest on times alone.
 */
export function clippingFindings(prepared: PreparedRecording, jump: JumpMotion): readonly Finding[] {
  const { rateHz, plates } = prepared.recording;
  const { events, test, hops, motion } = jump;
  const { takeoff, touchdown, landingEnd } = events;
  const began = events.onset ?? events.contactTouchdown ?? (takeoff === undefined ? undefined : motion.startSample);
  return prepared.clipped.flatMap(({ plate, span }) => {
    const name = plates[plate]?.name ?? "";
    const where = `${inPlateWords(name)}, ${(span.start / rateHz).toFixed(3)} s to ${(span.end / rateHz).toFixed(3)} s`;
    const seen = `Force stays at its largest value for ${span.end - span.start} samples: the plate's range was exceeded`;
    const action = "Widen the measuring range of the plate, then record again.";
    if (hops !== undefined) {
      return [proseFinding("clipped", "note", `${seen}; the times of the hops do not rest on it.`, action, { where })];
    }
    if (began !== undefined && takeoff !== undefined && span.end > began && span.start < takeoff) {
      return [
        proseFinding("clipped", "refusal", `${seen} before take-off, so no velocity can be made.`, action, { where }),
      ];
    }
    if (touchdown === undefined || span.end <= touchdown || span.start > (landingEnd ?? span.start)) return [];
    if (testFacts(test).flights === "none") {
      return [
        proseFinding("clipped", "refusal", `${seen} in the landing, so no velocity can be made.`, action, { where }),
      ];
    }
    return [
      proseFinding("clipped", "warning", `${seen} in the landing, whose measures are left out.`, action, {
        where,
        removes: landingForceMeasures,
      }),
    ];
  });
}
