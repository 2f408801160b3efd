/** Smaller changes are rounding, newtons. */
const roundingNewtons = 1e-6;

/** The smallest change between neighbours that is no rounding: one step of the converter; undefined without a change. */
export function converterStep(force: Float64Array): number | undefined {
  let smallest = Number.POSITIVE_INFINITY;
  for (let index = 1; index < force.length; index += 1) {
    const change = Math.abs(force[index]! - force[index - 1]!);
    if (change > roundingNewtons && change < smallest) smallest = change;
  }
  return Number.isFinite(smallest) ? smallest : undefined;
}
