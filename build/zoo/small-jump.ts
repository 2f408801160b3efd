import type { SimulatedPlate } from "../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";

/** Samples a second of every jump here. */
export const jumpRateHz = 500;
/** Body mass of the simulated athlete. */
export const jumpMassKg = 68;

const jump = simulateCountermovementJump({
  seed: 7,
  rateHz: jumpRateHz,
  massKg: jumpMassKg,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.24,
  timeToTakeoffSeconds: 0.6,
  quietSecondsBefore: 0.1,
  quietSecondsAfter: 0.2,
  plateNoiseNewtons: 0.6,
});

const [left, right] = jump.plates as readonly [SimulatedPlate, SimulatedPlate];

/** Rows of a whole jump: standing, push, flight, landing. */
export const wholeRows = jump.sampleCount;
/** Standing and the dip, for files that need no jump. */
export const shortRows = 160;

/** Newtons of one sample of a simulated jump. */
export function newtonsAt(limb: "left" | "right" | "both", row: number): number {
  const [one, other] = [left.force[row] ?? 0, right.force[row] ?? 0];
  return limb === "left" ? one : limb === "right" ? other : one + other;
}
