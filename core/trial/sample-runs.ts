import type { SampleSpan } from "./sample-span.ts";

/** Stretches of at least `least` samples that repeat one value exactly. */
export function sameValueRuns(force: Float64Array, least: number): readonly SampleSpan[] {
  const runs: SampleSpan[] = [];
  let start = 0;
  for (let index = 1; index <= force.length; index += 1) {
    if (index < force.length && force[index] === force[start]) continue;
    if (index - start >= least) runs.push({ start, end: index });
    start = index;
  }
  return runs;
}
