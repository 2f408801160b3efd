import type { Settings } from "../../settings/settings.ts";
import type { ForceSignal } from "../../trial/force-signal.ts";

/**
 * What swings about a peak of force, root mean square in newtons: what a polynomial through the samples beside it does
 * not follow, which is plate noise and whatever the plate still rings with. A force that bends sharply counts too, so it
 * is an upper figure. Zero where too few samples between `from` and `to` lie beside the peak.
 */
export function peakRipple(
  { force, rateHz }: ForceSignal,
  peak: number,
  from: number,
  to: number,
  settings: Settings,
): number {
  const centre = Math.round(peak);
  const reach = Math.floor(Math.min(settings.peakRippleSeconds * rateHz, centre - from, to - centre));
  const count = 2 * reach + 1;
  const freedom = count - settings.peakRippleDegree - 1;
  if (freedom < settings.peakRippleFreedom) return 0;
  const rest = force.slice(centre - reach, centre + reach + 1);
  const basis: Float64Array[] = [];
  for (let power = 0; power <= settings.peakRippleDegree; power += 1) {
    const next = Float64Array.from({ length: count }, (_, index) => ((index - reach) / reach) ** power);
    // Twice, so that rounding leaves them at right angles.
    for (let round = 0; round < 2; round += 1) for (const each of basis) takeAway(next, each);
    const length = Math.sqrt(product(next, next));
    const unit = next.map((value) => value / length);
    basis.push(unit);
    takeAway(rest, unit);
  }
  return Math.sqrt(product(rest, rest) / freedom);
}

/** Takes the part along a unit vector out of another, in place. */
function takeAway(from: Float64Array, unit: Float64Array): void {
  const part = product(from, unit);
  for (let index = 0; index < from.length; index += 1) from[index]! -= part * unit[index]!;
}

function product(first: Float64Array, second: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < first.length; index += 1) sum += first[index]! * second[index]!;
  return sum;
}
