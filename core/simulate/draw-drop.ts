import type { Limb } from "../limb.ts";
import { simulateDropJump } from "./drop-jump.ts";
import type { DropJumpOptions } from "./drop-options.ts";
import { createRandom } from "./random.ts";
import { contactShapeNames, landingShapeNames } from "./shapes.ts";

/** Bounds of what is drawn; the tables of accuracy are made over these. */
export interface DropBounds {
  readonly limb: Limb;
  readonly plates: "one" | "two";
  /** `clean`: no noise, no sway. `noisy`: plate noise of 1.5 N and sway of 0.4 to 1.5 mm. */
  readonly kind: "clean" | "noisy";
  /** `straight`: both touchdowns begin as straight lines of 10 to 30 kN/s. Absent: straight or curved, 10 to 100 kN/s. */
  readonly edges?: "straight";
  readonly massKg?: readonly [number, number];
  readonly ratesHz?: readonly number[];
}

const standardGravity = 9.80665;
const masses = [45, 120] as const;
const rates = [500, 600, 1000, 1200, 2000] as const;

/**
 * Draws a plausible drop jump from a seed: box, effective drop, height, contact, shapes, steepness, limb shares,
 * leading leg. A drawn combination that no force law can make is drawn again, so every seed gives a jump.
 */
export function drawDropJump(seed: number, bounds: DropBounds): DropJumpOptions {
  const random = createRandom(seed ^ 0x2c1b3c6d);
  const single = bounds.limb !== "both";
  const [lowMass, highMass] = bounds.massKg ?? masses;
  for (let attempt = 0; attempt < 500; attempt++) {
    const massKg = random.between(lowMass, highMass);
    const weight = massKg * standardGravity;
    const boxHeightMetres = single ? random.pick([0.15, 0.2, 0.25]) : random.pick([0.2, 0.3, 0.4, 0.5]);
    const jumpHeightMetres = single ? random.between(0.085, 0.2) : random.between(0.12, 0.45);
    const rateFor = (): number =>
      bounds.edges === "straight"
        ? random.between(10000, 30000)
        : clamp(weight * random.between(20, 110), 10000, 100000);
    const share = (): number => random.between(0.42, 0.57);
    const options: DropJumpOptions = {
      seed,
      rateHz: random.pick(bounds.ratesHz ?? rates),
      massKg,
      limb: bounds.limb,
      plates: bounds.plates,
      boxHeightMetres,
      dropHeightEffectiveMetres: boxHeightMetres * random.between(0.84, 1),
      jumpHeightMetres,
      contactSeconds: single ? random.between(0.26, 0.46) : random.between(0.16, 0.42),
      contactShape: random.pick(contactShapeNames),
      landingShape: random.pick(landingShapeNames),
      positionAtTakeoffMetres: random.between(0.07, 0.13),
      contactLowerMetres: random.between(0, 0.03),
      touchdownLowerMetres: random.between(0, Math.min(0.025, 0.15 * jumpHeightMetres)),
      takeoffRateNewtonsPerSecond: clamp(weight * random.between(12, 32), 10000, 30000),
      touchdownRateNewtonsPerSecond: rateFor(),
      landingRateNewtonsPerSecond: rateFor(),
      straightTo: bounds.edges === "straight" ? 0.5 : random.pick([0, 0.4]),
      emptySecondsBefore: random.between(0.8, 1.6),
      quietSecondsAfter: random.between(2.5, 3.2),
      ...(single
        ? {}
        : {
            rightShares: {
              standing: random.between(0.47, 0.53),
              braking: share(),
              propulsion: share(),
              landing: share(),
            },
            leadingLeg: random.pick(["left", "right"] as const),
            leadingFirstSeconds: random.between(0.001, 0.006),
            leadingBrakingGain: random.between(0.01, 0.05),
            limbTakeoffDifferenceSeconds: random.between(-0.006, 0.006),
            limbLandingDifferenceSeconds: random.between(-0.003, 0.003),
          }),
      ...(bounds.kind === "clean" ? {} : { plateNoiseNewtons: 1.5, swayMetres: random.between(0.0004, 0.0015) }),
    };
    if (isPlausible(options)) return options;
  }
  throw new RangeError(`No possible drop jump within these bounds for seed ${seed}.`);
}

function isPlausible(options: DropJumpOptions): boolean {
  try {
    const { truth, forceAt } = simulateDropJump({ ...options, rateHz: 10 });
    const peak = Math.max(truth.phases.braking.peakForce.both, truth.phases.propulsion.peakForce.both);
    const single = options.limb !== "both";
    const lower = truth.positionAtTakeoffMetres - truth.positionAtTouchdownMetres;
    return (
      peak <= (single ? 4.2 : 7) * truth.bodyWeightNewtons &&
      lower > -0.03 &&
      lower < 0.04 &&
      truth.positionLowestMetres > (single ? -0.3 : -0.45) &&
      // A landing whose velocity only grazes zero has no end that anybody could find.
      forceAt(truth.events.landingEnd) > 1.1 * truth.bodyWeightNewtons
    );
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
