import type { Settings } from "../settings/settings.ts";

/**
 * How many samples stand for one measured value where force moves fast: 1 in a sound recording, ten where 100 values a
 * second were written as 1000. Equal neighbours are no chance there: a converter's steps are passed in one sample.
 * @param steps one step of each plate's converter, newtons
 */
export function samplesPerValue(
  forces: readonly Float64Array[],
  steps: readonly number[],
  rateHz: number,
  settings: Settings,
): number {
  const half = Math.max(settings.repeatedHalfWindowSamples, Math.round((settings.repeatedWindowSeconds * rateHz) / 2));
  const least =
    half *
    Math.max(
      settings.repeatedMovingNewtonsPerSecond / rateHz,
      ...steps.map((step) => settings.repeatedStepsASample * step),
    );
  const count = forces[0]?.length ?? 0;
  let moving = 0;
  let changed = 0;
  for (let index = half; index < count - half; index += 1) {
    if (!moves(forces, index, half, least)) continue;
    moving += 1;
    if (changes(forces, index)) changed += 1;
  }
  if (changed < settings.repeatedLeastChanges || changed > (1 - settings.repeatedFraction) * moving) return 1;
  return moving / changed;
}

/** True where a plate's force moves on either side: at a single step it stands still before and after. */
function moves(forces: readonly Float64Array[], index: number, half: number, least: number): boolean {
  for (let plate = 0; plate < forces.length; plate += 1) {
    const force = forces[plate]!;
    const here = force[index]!;
    if (Math.abs(force[index + half]! - here) > least && Math.abs(here - force[index - half]!) > least) return true;
  }
  return false;
}

function changes(forces: readonly Float64Array[], index: number): boolean {
  for (let plate = 0; plate < forces.length; plate += 1) {
    const force = forces[plate]!;
    if (force[index] !== force[index - 1]) return true;
  }
  return false;
}
