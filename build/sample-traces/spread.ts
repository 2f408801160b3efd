import type { Random } from "../../core/simulate/random.ts";

/** Every test of a session has so many trials a side. */
export const trialsPerTest = 4;
export const rateHz = 1000;

/** Spread within a session (coefficient of variation; share in parts of one). */
export const spread = {
  twoLegHeight: 0.03,
  oneLegHeight: 0.05,
  seconds: 0.025,
  depth: 0.025,
  contact: 0.04,
  share: 0.01,
};

/** Four values whose mean is zero and whose sample SD is one, so that a session's mean is the wanted one. */
export function drawCentred(random: Random): readonly number[] {
  const raw = Array.from({ length: trialsPerTest }, () => random.normal());
  const mean = raw.reduce((sum, each) => sum + each, 0) / trialsPerTest;
  const deviation = Math.sqrt(raw.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (trialsPerTest - 1));
  return raw.map((each) => (each - mean) / deviation);
}
