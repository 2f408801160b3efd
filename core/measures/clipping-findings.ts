import type { JumpMotion } from "../events/jump-events.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

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
  return prepared.clipped.flatMap(({ plate, span }): readonly Finding[] => {
    const name = plates[plate]?.name ?? "";
    const place = {
      at: "plate span",
      plate: name,
      fromSeconds: span.start / rateHz,
      toSeconds: span.end / rateHz,
      decimals: 3,
    } as const;
    const seen = { samples: span.end - span.start };
    if (hops !== undefined) return [finding("clipped/hops", "note", seen, { place })];
    if (began !== undefined && takeoff !== undefined && span.end > began && span.start < takeoff) {
      return [finding("clipped/before-takeoff", "refusal", seen, { place })];
    }
    if (touchdown === undefined || span.end <= touchdown || span.start > (landingEnd ?? span.start)) return [];
    return testFacts(test).flights === "none"
      ? [finding("clipped/only-landing", "refusal", seen, { place })]
      : [finding("clipped/landing", "warning", seen, { place, removes: landingForceMeasures })];
  });
}
