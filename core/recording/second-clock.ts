import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { Columns } from "./column-roles.ts";
import { printedResolution, typicalStep } from "./stamps.ts";
import { namedColumn } from "./stated-columns.ts";
import { secondsIn, type TimeUnit, timeUnitOf } from "./time-units.ts";

/** The time column that was used. */
interface UsedClock {
  readonly index: number;
  readonly unit: TimeUnit;
}

/**
 * A second time column that says another time than the one used: plates with clocks of their own, whose samples of one
 * row do not belong to one instant. Wall clocks are left aside; computers set them.
 */
export function secondClockFindings(
  hints: readonly ColumnHint[],
  columns: Columns,
  used: UsedClock | undefined,
  settings: Settings,
): readonly Finding[] {
  const own = used === undefined ? undefined : columns[used.index];
  if (used === undefined || own === undefined || own.length < 2) return [];
  const scale = secondsIn[used.unit];
  const stepSeconds = typicalStep(own, settings) * scale;
  return hints.flatMap((hint, index): Finding[] => {
    const other = columns[index];
    const unit = timeUnitOf(hint.unit) ?? (hint.unit === "" ? used.unit : undefined);
    if (hint.kind !== "time" || index === used.index || other === undefined || unit === undefined) return [];
    const otherScale = secondsIn[unit];
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let row = 0; row < own.length; row++) {
      const difference = other[row]! * otherScale - own[row]! * scale;
      if (difference < least) least = difference;
      if (difference > most) most = difference;
    }
    const rounding = printedResolution(own) * scale + printedResolution(other) * otherScale;
    const tolerance = stepSeconds / 2 + rounding;
    const nearest = Math.min(Math.abs(least), Math.abs(most));
    const both = { other: namedColumn(hint, index), used: namedColumn(hints[used.index]!, used.index) };
    const about = { place: { at: "time column" }, answers: [{ columns: { time: index + 1 } }] } as const;
    if (most - least > tolerance)
      return [finding("columns-disagree/clocks-drift", "warning", { ...both, seconds: most - least }, about)];
    if (nearest > tolerance && nearest < settings.commonZeroSeconds)
      return [finding("columns-disagree/clocks-apart", "warning", { ...both, seconds: nearest }, about)];
    return [];
  });
}
