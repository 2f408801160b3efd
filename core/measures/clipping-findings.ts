import type { JumpEvents } from "../events/jump-events.ts";
import { type Finding, finding } from "../finding.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { measureCatalogue } from "./catalogue.ts";

/** Landing measures that an exceeded range falsifies. */
const falsified = measureCatalogue
  .filter(
    (entry) =>
      entry.group === "landing" && entry.id !== "limbTouchdownDifference" && entry.id !== "timeToStabilisation",
  )
  .map((entry) => entry.id);

/**
 * What an exceeded measuring range costs: in the landing its measures, before take-off the whole trial, because
 * velocity is integrated from the force that is missing.
 */
export function clippingFindings(prepared: PreparedRecording, events: JumpEvents): readonly Finding[] {
  const { rateHz, plates } = prepared.recording;
  return prepared.clipped.flatMap(({ plate, span }) => {
    const name = plates[plate]?.name ?? "";
    const where = `plate ${name}, ${(span.start / rateHz).toFixed(3)} s to ${(span.end / rateHz).toFixed(3)} s`;
    const seen = `Force stays at its largest value for ${span.end - span.start} samples: the plate's range was exceeded`;
    const action = "Widen the measuring range of the plate, then record again.";
    if (span.end > events.onset && span.start < events.takeoff) {
      return [finding("clipped", "refusal", `${seen} before take-off, so no velocity can be made.`, action, { where })];
    }
    const { touchdown, landingEnd } = events;
    if (touchdown === undefined || span.end <= touchdown || span.start > (landingEnd ?? span.start)) return [];
    return [
      finding("clipped", "warning", `${seen} in the landing, whose measures are left out.`, action, {
        where,
        removes: falsified,
      }),
    ];
  });
}
