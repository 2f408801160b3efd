import type { WrittenLine } from "../ground/findings/file-parts.ts";
import type { ForceColumnUnit } from "./force-units.ts";
import { forceUnitOf } from "./force-units.ts";
import type { HeaderHint } from "./header-hint.ts";
import { lineOf } from "./statement-source.ts";

/** The unit of force that a line above the column names gives for the whole file; undefined where none or several do. */
export function headerUnit(
  hints: readonly HeaderHint[],
): { readonly unit: ForceColumnUnit; readonly line: WrittenLine } | undefined {
  const found = hints.flatMap((hint) => {
    const unit = hint.kind === "unit" && typeof hint.value === "string" ? forceUnitOf(hint.value) : undefined;
    return unit === undefined ? [] : [{ unit, line: lineOf(hint) }];
  });
  return new Set(found.map((each) => each.unit)).size === 1 ? found[0] : undefined;
}
