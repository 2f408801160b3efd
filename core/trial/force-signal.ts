/**
 * Vertical force as the methods see it: samples joined by straight lines (METHODS §1). Places are fractional samples,
 * 0-based from the start of the recording; nothing here needs the time of day.
 */
export interface ForceSignal {
  readonly rateHz: number;
  /** Newtons, upward positive. */
  readonly force: Float64Array;
}

/** An extreme of the piecewise linear force. */
export interface ForceExtreme {
  readonly newtons: number;
  readonly sample: number;
}

/** Force in newtons at a fractional sample inside the recording. */
export function forceAt(signal: ForceSignal, sample: number): number {
  const { force } = signal;
  const index = Math.min(Math.floor(sample), force.length - 2);
  const here = force[index]!;
  return here + (sample - index) * (force[index + 1]! - here);
}

/**
 * Exact integral of the piecewise linear force between two fractional samples, N·s. Summed directly from the samples,
 * so that it can check what is computed from velocity.
 */
export function integrateForce(signal: ForceSignal, from: number, to: number): number {
  const { force, rateHz } = signal;
  const first = Math.ceil(from);
  const last = Math.floor(to);
  if (first > last) return ((forceAt(signal, from) + forceAt(signal, to)) / 2) * ((to - from) / rateHz);
  let sum = 0;
  for (let index = first; index < last; index += 1) sum += force[index]! + force[index + 1]!;
  sum += (force[first]! + forceAt(signal, from)) * (first - from);
  sum += (force[last]! + forceAt(signal, to)) * (to - last);
  return sum / (2 * rateHz);
}

/** Largest force between two fractional samples, the ends included. */
export function maximumForce(signal: ForceSignal, from: number, to: number): ForceExtreme {
  const { force } = signal;
  let newtons = forceAt(signal, from);
  let sample = from;
  for (let index = Math.ceil(from); index <= Math.floor(to); index += 1) {
    if (force[index]! > newtons) {
      newtons = force[index]!;
      sample = index;
    }
  }
  const end = forceAt(signal, to);
  return end > newtons ? { newtons: end, sample: to } : { newtons, sample };
}

/** Index of the smallest sample in [from, to). */
export function minimumIndex(force: Float64Array, from: number, to: number): number {
  let best = from;
  for (let index = from + 1; index < to; index += 1) if (force[index]! < force[best]!) best = index;
  return best;
}

/** Mean of the samples [from, to). */
export function meanOf(force: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let index = from; index < to; index += 1) sum += force[index]!;
  return sum / (to - from);
}

/** Mean and standard deviation (n − 1) of the samples [from, to), two passes so that large loads lose no digits. */
export function meanAndDeviation(
  force: Float64Array,
  from: number,
  to: number,
): { readonly mean: number; readonly deviation: number } {
  const count = to - from;
  const mean = meanOf(force, from, to);
  let squares = 0;
  for (let index = from; index < to; index += 1) squares += (force[index]! - mean) ** 2;
  return { mean, deviation: count > 1 ? Math.sqrt(squares / (count - 1)) : 0 };
}

/** Sum of the plates' forces: the total the athlete stands on. All plates have the same number of samples. */
export function totalForce(plates: readonly Float64Array[]): Float64Array {
  const first = plates[0]!;
  if (plates.length === 1) return first;
  const second = plates[1]!;
  // The length of a typed array is looked up anew in every round of a loop: a constant takes half the time.
  const count = first.length;
  const total = new Float64Array(count);
  for (let index = 0; index < count; index += 1) total[index] = first[index]! + second[index]!;
  return total;
}
