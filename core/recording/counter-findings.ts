import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { Columns } from "./column-roles.ts";
import { namedColumn } from "./stated-columns.ts";

/**
 * A counter beside the time column that skips numbers although time runs on: the stamps may have been made up after
 * samples were lost. A counter that starts again from its beginning skips nothing.
 */
export function counterFindings(
  hints: readonly ColumnHint[],
  columns: Columns,
  time: number | undefined,
  lineOfRow: Uint32Array,
  settings: Settings,
): readonly Finding[] {
  if (time === undefined) return [];
  return hints.flatMap((hint, index) => {
    const counter = columns[index];
    if (hint.kind !== "index" || index === time || counter === undefined) return [];
    let single = 0;
    const skips: number[] = [];
    for (let row = 1; row < counter.length; row++) {
      const step = counter[row]! - counter[row - 1]!;
      if (step === 1) single++;
      else if (step > 1) skips.push(row);
    }
    const [first] = skips;
    if (first === undefined || single < settings.counterSingleFraction * (counter.length - 1)) return [];
    const line = lineOfRow[first]!;
    return [
      finding(
        "gap/counter",
        "warning",
        {
          counter: namedColumn(hint, index),
          line,
          from: counter[first - 1]!,
          to: counter[first]!,
          others: skips.length - 1,
        },
        { place: { at: "line", line } },
      ),
    ];
  });
}
