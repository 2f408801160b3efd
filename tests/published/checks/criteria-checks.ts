import { returnToPivotingSport } from "../../../core/criteria/return-to-pivoting-sport.ts";
import type { CheckGroup } from "./published-check.ts";

const commonPractice = "common practice";
const wellsandt =
  "Wellsandt, Failla and Snyder-Mackler 2017, J Orthop Sports Phys Ther 47(5):334–338, read (small numbers)";

/** Stable identifiers of the shipped criteria, with what each asks for at least: an index in per cent. */
const percentages = [
  ["single-leg-countermovement-jump-height-symmetry", 90, commonPractice],
  ["single-leg-drop-jump-height-symmetry", 90, commonPractice],
  ["countermovement-jump-braking-impulse-symmetry", 90, commonPractice],
  ["countermovement-jump-propulsion-impulse-symmetry", 90, commonPractice],
  ["drop-jump-braking-impulse-symmetry", 90, commonPractice],
  ["drop-jump-propulsion-impulse-symmetry", 90, commonPractice],
  ["single-leg-countermovement-jump-height-against-reference", 90, wellsandt],
] as const;

/** The same for an absolute value in m/s, from a box of some metres. */
const reactiveStrengths = [
  ["drop-jump-reactive-strength-index", 1.3, 0.3],
  ["single-leg-drop-jump-reactive-strength-index", 0.5, 0.2],
] as const;

/** A number that a criterion of the set states; none where there is no such criterion or it states no such number. */
function stated(id: string, name: "atLeastPercent" | "atLeast" | "dropHeightMetres"): number {
  const criterion: Readonly<Record<string, unknown>> | undefined = returnToPivotingSport.criteria.find(
    (each) => each.id === id,
  );
  const value = criterion?.[name];
  return typeof value === "number" ? value : Number.NaN;
}

const words = (id: string): string => `return to pivoting sport, ${id.replaceAll("-", " ")}`;

export const criteriaChecks: CheckGroup = {
  subject: "Criteria that ship",
  checks: [
    ...percentages.map(([id, expected, source]) => ({
      check: `${words(id)}: at least`,
      source,
      expected,
      unit: "%",
      tolerance: 0,
      ours: () => stated(id, "atLeastPercent"),
    })),
    ...reactiveStrengths.flatMap(([id, expected, boxMetres]) => [
      {
        check: `${words(id)}: at least`,
        source: commonPractice,
        expected,
        unit: "m/s",
        tolerance: 0,
        ours: () => stated(id, "atLeast"),
      },
      {
        check: `${words(id)}: height of the box`,
        source: commonPractice,
        expected: boxMetres,
        unit: "m",
        tolerance: 0,
        ours: () => stated(id, "dropHeightMetres"),
      },
    ]),
  ],
};
