import { startsFromBox } from "../ground/test-kind.ts";
import { boxHeightText, sameBoxHeight } from "../sides/box-height.ts";
import type { Comparison } from "../sides/comparison.ts";
import { english } from "../words/english.ts";
import type { Criterion } from "./criterion.ts";

type Asked = Pick<Criterion, "test" | "legs" | "measure" | "dropHeightMetres">;

/** True for what has the criterion's test, legs, measure and, where it names one, box. */
function fits(criterion: Asked, comparison: Comparison): boolean {
  return (
    comparison.test === criterion.test &&
    comparison.legs === criterion.legs &&
    comparison.measure === criterion.measure &&
    (criterion.dropHeightMetres === undefined || sameBoxHeight(criterion.dropHeightMetres, comparison.dropHeightMetres))
  );
}

function fewestTrials({ first, second }: Comparison): number {
  return Math.min(first.values.length, second.values.length);
}

/**
 * The comparison a criterion reads. Box heights are never mixed: a criterion that names no box reads the box with most
 * trials on the side that has fewer, the lower of two alike.
 */
export function comparisonOf(criterion: Asked, comparisons: readonly Comparison[]): Comparison | undefined {
  return comparisons
    .filter((each) => fits(criterion, each))
    .reduce<Comparison | undefined>(
      (best, each) => (best === undefined || fewestTrials(each) > fewestTrials(best) ? each : best),
      undefined,
    );
}

/** "two-leg drop jump on two plates from 0.30 m": what a criterion needs trials of, in words. */
export function askedTrials(criterion: Asked, plates: "on two plates" | "" = ""): string {
  const { dropHeightMetres } = criterion;
  return [
    `${criterion.legs === "both" ? "two-leg" : "single-leg"} ${english.tests.label(criterion.test)}`,
    plates,
    dropHeightMetres === undefined ? "" : `from ${boxHeightText(dropHeightMetres)}`,
  ]
    .filter((part) => part !== "")
    .join(" ");
}

/** Which boxes the trials at hand are from instead, in a sentence; empty where the criterion names no box. */
export function otherBoxes(criterion: Asked, heights: readonly (number | undefined)[]): string {
  if (criterion.dropHeightMetres === undefined || !startsFromBox(criterion.test)) return "";
  const others = heights.filter((each) => !sameBoxHeight(each, criterion.dropHeightMetres));
  const stated = others.filter((each) => each !== undefined).map(boxHeightText);
  const from = [
    ...(stated.length === 0 ? [] : [`Trials from ${stated.join(", ")} do not count`]),
    ...(others.length === stated.length ? [] : ["Trials whose box height is not stated do not count"]),
  ];
  return from.map((each) => `${each}: a criterion belongs to its box height.`).join(" ");
}
