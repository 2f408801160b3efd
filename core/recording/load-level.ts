import type { Settings } from "../settings/settings.ts";
import { orderStatistic } from "./order-statistic.ts";

/**
 * A level is read from this many rows spread over the recording; more would not move it. No setting: it spares time.
 */
const mostRowsLookedAt = 20_000;

/** How many rows further the next one stands that is looked at. */
export function rowStride(rows: number): number {
  return Math.ceil(rows / mostRowsLookedAt);
}

/** The load a column reaches: the size that one value in twenty exceeds, so that spikes do not count. */
export function loadLevel(values: Float64Array, settings: Settings): number {
  const stride = rowStride(values.length);
  const sizes = new Float64Array(Math.ceil(values.length / Math.max(1, stride)));
  const rows = values.length;
  let count = 0;
  for (let row = 0; row < rows; row += stride) {
    if (Number.isFinite(values[row])) sizes[count++] = Math.abs(values[row]!);
  }
  if (count === 0) return 0;
  return orderStatistic(sizes.subarray(0, count), Math.min(count - 1, Math.floor(settings.loadLevelQuantile * count)));
}

/** Position of the column that is the sum of all the others, row by row; -1 where none is. */
export function sumOfOthers(columns: readonly Float64Array[], settings: Settings): number {
  if (columns.length < 3) return -1;
  const rows = columns[0]!.length;
  for (const [position, total] of columns.entries()) {
    const tolerance = settings.sumRoundingFraction * loadLevel(total, settings);
    let row = 0;
    while (row < rows) {
      let sum = -total[row]!;
      for (const [other, column] of columns.entries()) if (other !== position) sum += column[row]!;
      if (!(Math.abs(sum) <= tolerance) && Number.isFinite(sum)) break;
      row++;
    }
    if (row === rows && tolerance > 0) return position;
  }
  return -1;
}
