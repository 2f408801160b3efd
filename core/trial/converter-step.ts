/** Smaller changes are rounding, newtons. No setting: rounding of doubles. */
const roundingNewtons = 1e-6;

/** The smallest change between neighbours that is no rounding: one step of the converter; undefined without a change. */
export function converterStep(force: Float64Array): number | undefined {
  let smallest = Number.POSITIVE_INFINITY;
  const count = force.length;
  let before = count > 0 ? force[0]! : 0;
  for (let index = 1; index < count; index += 1) {
    const here = force[index]!;
    const change = Math.abs(here - before);
    before = here;
    if (change > roundingNewtons && change < smallest) smallest = change;
  }
  return Number.isFinite(smallest) ? smallest : undefined;
}
