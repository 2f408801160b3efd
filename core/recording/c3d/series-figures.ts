/** A series in figures. Values that are no numbers count in `unreadable` alone. */
export interface SeriesFigures {
  /** Absent, like the other figures, where the series holds no number. */
  readonly minimum?: number;
  readonly maximum?: number;
  readonly mean?: number;
  readonly unreadable: number;
  /** At the samples asked for; null where the series has none, or no number there. */
  readonly values: readonly (number | null)[];
}

/** @param sampleIndices from 0 */
export function seriesFigures(series: Float64Array, sampleIndices: readonly number[]): SeriesFigures {
  let minimum = Number.POSITIVE_INFINITY;
  let maximum = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let count = 0;
  for (const value of series) {
    if (!Number.isFinite(value)) continue;
    if (value < minimum) minimum = value;
    if (value > maximum) maximum = value;
    sum += value;
    count++;
  }
  return {
    ...(count === 0 ? {} : { minimum, maximum, mean: sum / count }),
    unreadable: series.length - count,
    values: sampleIndices.map((index) => {
      const value = series[index];
      return value !== undefined && Number.isFinite(value) ? value : null;
    }),
  };
}
