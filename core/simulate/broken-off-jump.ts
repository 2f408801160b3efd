import type { SimulatedRecording } from "./countermovement-jump.ts";
import { bumpDisplacement, sumDisplacements } from "./displacement.ts";
import { addPlateErrors } from "./plate-errors.ts";
import { createRandom } from "./random.ts";
import { drawSway, swayDisplacement } from "./sway.ts";

/** What can be asked of an attempt that never leaves the plate. SI units. */
export interface BrokenOffOptions {
  readonly seed: number;
  readonly rateHz: number;
  readonly massKg: number;
  readonly gravity?: number;
  readonly plates: "one" | "two";
  readonly rightShare?: number;
  readonly depthMetres?: number;
  /** From the first movement to standing again. */
  readonly movementSeconds?: number;
  readonly quietSecondsBefore?: number;
  readonly quietSecondsAfter?: number;
  readonly swayMetres?: number;
  readonly plateNoiseNewtons?: number;
}

/** Simulates a jump that is broken off: a dip and a return to standing, described as a displacement of the body. */
export function simulateBrokenOffJump(
  options: BrokenOffOptions,
): SimulatedRecording & { readonly truth: { readonly massKg: number; readonly depthMetres: number } } {
  const random = createRandom(options.seed);
  const { rateHz, massKg } = options;
  const gravity = options.gravity ?? 9.80665;
  const depthMetres = options.depthMetres ?? 0.22;
  const movementSeconds = options.movementSeconds ?? 1.3;
  const firstMovement = (options.quietSecondsBefore ?? 2.2) + random.uniform() / rateHz;
  const parts = [bumpDisplacement(-depthMetres, firstMovement, movementSeconds)];
  if (options.swayMetres !== undefined) parts.push(swayDisplacement(drawSway(random, options.swayMetres)));
  const motion = sumDisplacements(parts);
  const sampleCount = Math.floor((firstMovement + movementSeconds + (options.quietSecondsAfter ?? 2.7)) * rateHz) + 1;
  const rightShare = options.rightShare ?? 0.5;
  const column = (name: string, limb: "left" | "right" | "both", share: number) => ({
    name,
    limb,
    force: Float64Array.from(
      { length: sampleCount },
      (_, index) => share * massKg * (gravity + motion.acceleration(index / rateHz)),
    ),
  });
  const plates =
    options.plates === "one"
      ? [column("force", "both", 1)]
      : [column("left", "left", 1 - rightShare), column("right", "right", rightShare)];
  const errors = { plateNoiseNewtons: options.plateNoiseNewtons ?? 0 };
  for (const [index, plate] of plates.entries()) {
    addPlateErrors(plate.force, { index, rateHz, strokes: [] }, errors, random);
  }
  return { rateHz, sampleCount, plates, truth: { massKg, depthMetres } };
}
