import type { Settings } from "../settings.ts";
import { converterStep } from "./converter-step.ts";

/** Force must change this fast, on average over the window, for equal neighbours to mean repetition. */
const movingNewtonsPerSecond = 2000;
/** And by so many steps of the converter from one sample to the next: else equal neighbours are its rounding. */
const stepsASample = 3;
/** Half the window spans more than one value that stands ten times. */
const leastHalf = 12;
const windowSeconds = 0.02;
/** Changes seen where force moves, at least. */
const leastChanges = 20;

/**
 * How many samples stand for one measured value where force moves fast: 1 in a sound recording, ten where 100 values a
 * second were written as 1000. Equal neighbours are no chance there: a converter's steps are passed in one sample.
 */
export function samplesPerValue(forces: readonly Float64Array[], rateHz: number, settings: Settings): number {
  const half = Math.max(leastHalf, Math.round((windowSeconds * rateHz) / 2));
  const steps = forces.map((force) => stepsASample * (converterStep(force) ?? 0));
  const least = half * Math.max(movingNewtonsPerSecond / rateHz, ...steps);
  const count = forces[0]?.length ?? 0;
  let moving = 0;
  let changed = 0;
  for (let index = half; index < count - half; index += 1) {
    let moves = false;
    let changes = false;
    for (const force of forces) {
      const here = force[index]!;
      // On either side: at a single step force stands still before and after.
      if (Math.min(Math.abs(force[index + half]! - here), Math.abs(here - force[index - half]!)) > least) moves = true;
      if (force[index] !== force[index - 1]) changes = true;
    }
    if (!moves) continue;
    moving += 1;
    if (changes) changed += 1;
  }
  if (changed < leastChanges || changed > (1 - settings.repeatedFraction) * moving) return 1;
  return moving / changed;
}
