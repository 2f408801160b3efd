import type { Side } from "../ground/limb.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import { displayUnit, type UcumUnit } from "../ground/units.ts";
import { sameBoxHeight } from "../sides/box-height.ts";
import type { ReferenceValue } from "../stated/reference-value.ts";
import type { Criterion } from "./criterion.ts";

/**
 * The latest usable reference of one side for a criterion's measure. A value in another unit is never converted; in
 * tests from a box, one from another box or from a box nobody stated does not count.
 */
export function latestReference(
  references: readonly ReferenceValue[],
  criterion: Pick<Criterion, "test" | "legs" | "measure" | "dropHeightMetres">,
  side: Side,
  unit: UcumUnit,
): ReferenceValue | undefined {
  return references
    .filter(
      (each) =>
        each.test === criterion.test &&
        each.legs === criterion.legs &&
        each.measure === criterion.measure &&
        (!startsFromBox(criterion.test) || sameBoxHeight(each.dropHeightMetres, criterion.dropHeightMetres)) &&
        each.side === side &&
        each.unit === unit &&
        each.value > 0,
    )
    .reduce<ReferenceValue | undefined>(
      (latest, each) => (latest === undefined || each.date > latest.date ? each : latest),
      undefined,
    );
}

/** A value with its unit as screens show it: "14.2 cm", "96.1 N·s". */
export function valueText(value: number, unit: UcumUnit): string {
  const { symbol, factor } = displayUnit(unit);
  return `${(value * factor).toFixed(1)} ${symbol}`.trim();
}
