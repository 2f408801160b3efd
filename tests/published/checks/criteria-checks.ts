import { returnToPivotingSport } from "../../../core/criteria/return-to-pivoting-sport.ts";
import type { CheckGroup } from "./published-check.ts";

/** Stable identifiers of the shipped criteria that ask for a percentage, and what they ask for. */
const percentages = [
  ["single-leg-countermovement-jump-height-symmetry", 90, "common practice"],
  ["countermovement-jump-braking-impulse-symmetry", 90, "common practice"],
  ["countermovement-jump-propulsion-impulse-symmetry", 90, "common practice"],
  [
    "single-leg-countermovement-jump-height-against-reference",
    90,
    "Wellsandt, Failla and Snyder-Mackler 2017, J Orthop Sports Phys Ther 47(5):334–338, read (small numbers)",
  ],
] as const;

function atLeastPercent(id: string): number {
  const criterion = returnToPivotingSport.criteria.find((each) => each.id === id);
  return criterion === undefined || !("atLeastPercent" in criterion) ? Number.NaN : criterion.atLeastPercent;
}

export const criteriaChecks: CheckGroup = {
  subject: "Criteria that ship",
  checks: percentages.map(([id, expected, source]) => ({
    check: `return to pivoting sport, ${id.replaceAll("-", " ")}: at least`,
    source,
    expected,
    unit: "%",
    tolerance: 0,
    ours: () => atLeastPercent(id),
  })),
};
