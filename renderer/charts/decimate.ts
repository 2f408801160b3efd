/** Points of one curve, for drawing only. */
export interface CurvePoints {
  readonly x: number[];
  readonly y: number[];
}

/** A curve sampled evenly: sample k of `values` stands at `startSeconds + k × stepSeconds`. */
export interface EvenCurve {
  readonly values: Float64Array;
  readonly startSeconds: number;
  readonly stepSeconds: number;
}

/** About three points a pixel on a wide screen. */
export const mostPoints = 2000;

/**
 * Thins a curve for drawing: each of `most / 2` buckets of the visible stretch keeps its smallest and its largest value
 * in the order they came, so that no peak is lost. One sample beyond each edge is kept, so that lines leave the picture
 * where they should. A bucket without any number leaves a gap.
 */
export function decimate(
  curve: EvenCurve,
  visible: { readonly from: number; readonly to: number },
  most: number = mostPoints,
): CurvePoints {
  const { values, startSeconds, stepSeconds } = curve;
  const first = Math.max(0, Math.floor((visible.from - startSeconds) / stepSeconds) - 1);
  const end = Math.min(values.length, Math.ceil((visible.to - startSeconds) / stepSeconds) + 2);
  const points: CurvePoints = { x: [], y: [] };
  const keep = (index: number) => {
    points.x.push(startSeconds + index * stepSeconds);
    points.y.push(values[index] ?? Number.NaN);
  };
  if (end - first <= most) {
    for (let index = first; index < end; index++) keep(index);
    return points;
  }
  const buckets = Math.max(1, Math.floor(most / 2));
  const width = (end - first) / buckets;
  for (let bucket = 0; bucket < buckets; bucket++) {
    const from = first + Math.floor(bucket * width);
    const to = first + Math.floor((bucket + 1) * width);
    const { lowest, highest } = extremesOf(values, from, to);
    if (lowest < 0) keep(from);
    else if (lowest === highest) keep(lowest);
    else {
      keep(Math.min(lowest, highest));
      keep(Math.max(lowest, highest));
    }
  }
  return points;
}

/** Where the smallest and the largest number of [from, to) stand; −1 when it holds no number. */
function extremesOf(values: Float64Array, from: number, to: number): { lowest: number; highest: number } {
  let lowest = -1;
  let highest = -1;
  for (let index = from; index < to; index++) {
    const value = values[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (lowest < 0 || value < (values[lowest] ?? 0)) lowest = index;
    if (highest < 0 || value > (values[highest] ?? 0)) highest = index;
  }
  return { lowest, highest };
}
