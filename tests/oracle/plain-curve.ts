/** Samples joined by straight lines (METHODS §1); sample k stands at k / rateHz seconds. Newtons. */
export interface PlainForce {
  readonly rateHz: number;
  readonly samples: readonly number[];
}

/** The instants at which the curve may change its law between two times: the times themselves and the samples between. */
export function knotsBetween(rateHz: number, from: number, to: number): number[] {
  const knots = [from];
  for (let index = Math.ceil(from * rateHz); index / rateHz < to; index++) {
    if (index / rateHz > from) knots.push(index / rateHz);
  }
  knots.push(to);
  return knots;
}

/** Force on the line between the two samples around a time. */
export function forceAt(force: PlainForce, time: number): number {
  const place = time * force.rateHz;
  const index = Math.min(Math.max(Math.floor(place), 0), force.samples.length - 2);
  const before = force.samples[index]!;
  const after = force.samples[index + 1]!;
  return before + (after - before) * (place - index);
}

/** ∫F dt, exact: the area of the trapezoids. */
export function impulseBetween(force: PlainForce, from: number, to: number): number {
  const knots = knotsBetween(force.rateHz, from, to);
  let area = 0;
  for (let piece = 0; piece + 1 < knots.length; piece++) {
    const start = knots[piece]!;
    const end = knots[piece + 1]!;
    area += ((forceAt(force, start) + forceAt(force, end)) / 2) * (end - start);
  }
  return area;
}

/** Largest value between two times, and when: on straight lines it lies at a knot. */
export function largestBetween(force: PlainForce, from: number, to: number): { time: number; value: number } {
  let best = { time: from, value: forceAt(force, from) };
  for (const time of knotsBetween(force.rateHz, from, to)) {
    const value = forceAt(force, time);
    if (value > best.value) best = { time, value };
  }
  return best;
}

/** The sum of several plates, sample by sample. */
export function sumOf(plates: readonly PlainForce[]): PlainForce {
  const first = plates[0]!;
  const samples: number[] = [];
  for (let index = 0; index < first.samples.length; index++) {
    let total = 0;
    for (const plate of plates) total += plate.samples[index]!;
    samples.push(total);
  }
  return { rateHz: first.rateHz, samples };
}

/** The same force with time running backwards: the last sample stands at zero. */
export function reversed(force: PlainForce): PlainForce {
  return { rateHz: force.rateHz, samples: [...force.samples].reverse() };
}

/** Time of the last sample. */
export function lastTime(force: PlainForce): number {
  return (force.samples.length - 1) / force.rateHz;
}

export function meanOf(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** Mean and standard deviation (n − 1) of `count` values from `first` on. */
export function meanAndDeviationOf(
  values: readonly number[],
  first: number,
  count: number,
): { mean: number; deviation: number } {
  let sum = 0;
  for (let index = first; index < first + count; index++) sum += values[index]!;
  const mean = sum / count;
  let squares = 0;
  for (let index = first; index < first + count; index++) squares += (values[index]! - mean) ** 2;
  return { mean, deviation: Math.sqrt(squares / (count - 1)) };
}

/** Standard deviation with n − 1. */
export function deviationOf(values: readonly number[]): number {
  return meanAndDeviationOf(values, 0, values.length).deviation;
}

export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Where a continuous function changes its sign between two times, by halving the stretch. */
export function halve(valueAt: (time: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  const rising = valueAt(low) <= 0;
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2;
    if (valueAt(middle) <= 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
