import type { FindingCode } from "../../../core/ground/finding-codes.ts";

const weights = /^body(Weight|Mass)$/;
/** Times and heights that follow from contact events alone. */
const contacts = /^(flightTime|jumpHeightFlightTime|contactTime|reactiveStrengthIndex(BestFive)?|limb\w+Difference)$/;
const landings = /Landing|^landing|^loadingRate|^limbTouchdownDifference|^flightTime|FlightTime/;
const drops = /^dropHeight/;
const starts = /^(timeToTakeoff|reactiveStrengthIndexModified|unweighting\w*|propulsion\w*|meanPropulsion\w*)$/;
/** Largest forces, which a coarse take-off does not move. */
const peaks = /^peak\w*Force/;

/** Which measures a warning concerns; a code that is missing here warns of nothing that is measured. */
const concerned: Partial<Record<FindingCode, (id: string) => boolean>> = {
  "rate-low": () => true,
  "time-uneven": () => true,
  gap: () => true,
  spikes: () => true,
  clipped: () => true,
  "plate-noisy": (id) => !weights.test(id) && !peaks.test(id),
  "weighing-short": (id) => !contacts.test(id),
  "weighing-restless": (id) => !contacts.test(id),
  "weight-differs": (id) => !contacts.test(id),
  "starts-moving": (id) => !contacts.test(id),
  "velocity-from-flight": (id) => !contacts.test(id) && !weights.test(id),
  "heights-differ": (id) => !weights.test(id) && !drops.test(id),
  "landing-short": (id) => landings.test(id) || weights.test(id),
  "landing-restless": (id) => landings.test(id),
  "landing-off-plate": (id) => landings.test(id),
  "bounce-after-landing": (id) => landings.test(id),
  "dip-in-squat-jump": (id) => starts.test(id),
  "leg-swing": (id) => starts.test(id),
  "drop-height-off": (id) => drops.test(id),
};

/** True when a warning of this code concerns the measure. */
export function warnsOf(code: FindingCode, id: string): boolean {
  return concerned[code]?.(id) ?? false;
}
