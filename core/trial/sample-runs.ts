import type { SampleSpan } from "./sample-span.ts";

/** Stretches of at least `least` samples that repeat one value exactly. */
export function sameValueRuns(force: Float64Array, least: number): readonly SampleSpan[] {
  const runs: SampleSpan[] = [];
  const count = force.length;
  let start = 0;
  let repeated = count > 0 ? force[0]! : Number.NaN;
  for (let index = 1; index <= count; index += 1) {
    const value = index < count ? force[index]! : Number.NaN;
    if (value === repeated) continue;
    if (index - start >= least) runs.push({ start, end: index });
    start = index;
    repeated = value;
  }
  return runs;
}
