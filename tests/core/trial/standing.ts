/** A made-up total force: stretches of [seconds, newtons], joined by steps, at 1000 Hz. */
export function stretches(parts: readonly (readonly [seconds: number, newtons: number])[]): Float64Array {
  const values = parts.flatMap(([seconds, newtons]) => new Array<number>(Math.round(seconds * 1000)).fill(newtons));
  return Float64Array.from(values);
}
