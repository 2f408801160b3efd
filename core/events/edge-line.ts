/** The line through the last loaded samples of a contact, over distances counted inwards from the last of them. */
export interface EdgeLine {
  /** Newtons a sample inwards, positive where force falls outwards. */
  readonly slope: number;
  /** Newtons at the last loaded sample. */
  readonly intercept: number;
  readonly count: number;
  readonly meanDistance: number;
  /** Sum of squared distances from their mean. */
  readonly squares: number;
}

/**
 * Least squares through the loaded-side samples between `floor` and `top`, at least the two nearest the crossing
 * (METHODS §3).
 * @param direction 1 where the plate is left, −1 where it is touched: outwards in time
 * @returns undefined at the end of the recording.
 */
export function edgeLine(
  force: Float64Array,
  loaded: number,
  direction: 1 | -1,
  floor: number,
  top: number,
): EdgeLine | undefined {
  let count = 0;
  while (count < force.length) {
    const value = force[loaded - direction * count];
    if (value === undefined || value < floor || value > top) break;
    count += 1;
  }
  const used = Math.max(2, count);
  let sumX = 0;
  let sumY = 0;
  let sumXX = 0;
  let sumXY = 0;
  for (let distance = 0; distance < used; distance += 1) {
    const value = force[loaded - direction * distance];
    if (value === undefined) return undefined;
    sumX += distance;
    sumY += value;
    sumXX += distance * distance;
    sumXY += distance * value;
  }
  const slope = (used * sumXY - sumX * sumY) / (used * sumXX - sumX * sumX);
  const meanDistance = sumX / used;
  return {
    slope,
    intercept: (sumY - slope * sumX) / used,
    count: used,
    meanDistance,
    squares: sumXX - used * meanDistance * meanDistance,
  };
}
