import type { Limb } from "../ground/limb.ts";
import { buildBody } from "./body.ts";
import type { JumpOptions } from "./options.ts";
import { findMaximum } from "./quadrature.ts";
import { createRandom } from "./random.ts";
import { landingShapeNames, landingShapes, pushShapeNames } from "./shapes.ts";

/** Bounds of what is drawn; the tables of accuracy are made over these. */
export interface DrawBounds {
  readonly limb: Limb;
  readonly plates: "one" | "two";
  /** `clean`: no noise, no sway. `noisy`: plate noise of 1.5 N and sway of 0.4 to 1.5 mm, no weight shift. */
  readonly kind: "clean" | "noisy";
  /** `straight`: the landing begins as a straight line of 10 to 30 kN/s, and force leaves no slower than 10 kN/s. */
  readonly edges?: "straight";
  readonly heightMetres?: readonly [number, number];
  readonly massKg?: readonly [number, number];
  readonly ratesHz?: readonly number[];
}

const bothHeights = [0.1, 0.55] as const;
const singleHeights = [0.06, 0.24] as const;
const masses = [45, 120] as const;
const rates = [500, 600, 1000, 1200, 2000] as const;
const standardGravity = 9.80665;

/**
 * Draws a plausible jump from a seed: every shape, mass, height, rate, steepness, limb shares. A drawn combination that
 * no force law can make is drawn again, so every seed gives a jump. The same seed and bounds give the same options.
 */
export function drawJump(seed: number, bounds: DrawBounds): JumpOptions {
  const random = createRandom(seed ^ 0x5bd1e995);
  const single = bounds.limb !== "both";
  const [lowHeight, highHeight] = bounds.heightMetres ?? (single ? singleHeights : bothHeights);
  const [lowMass, highMass] = bounds.massKg ?? masses;
  for (let attempt = 0; attempt < 500; attempt++) {
    const massKg = random.between(lowMass, highMass);
    const weight = massKg * standardGravity;
    const jumpHeightMetres = random.between(lowHeight, highHeight);
    const pushShape = random.pick(pushShapeNames);
    const landingShape = random.pick(landingShapeNames);
    const slower = pushShape === "slow-dip" ? 0.15 : pushShape === "bottom-pause" ? 0.2 : 0;
    const seconds = single
      ? 0.7 + 0.9 * jumpHeightMetres + random.between(0, 0.25)
      : 0.58 + 0.6 * jumpHeightMetres + random.between(0, 0.2);
    const share = (): number => random.between(0.42, 0.56);
    const options: JumpOptions = {
      seed,
      rateHz: random.pick(bounds.ratesHz ?? rates),
      massKg,
      limb: bounds.limb,
      plates: bounds.plates,
      jumpHeightMetres,
      pushShape,
      landingShape,
      timeToTakeoffSeconds: seconds + slower,
      unweightingMinimum: single ? random.between(0.55, 0.72) : random.between(0.2, 0.55),
      positionAtTakeoffMetres: random.between(0.07, 0.13),
      touchdownLowerMetres: random.between(0, Math.min(0.025, 0.15 * jumpHeightMetres)),
      takeoffRateNewtonsPerSecond: clamp(weight * random.between(9, 26), 5000, 30000),
      touchdownRateNewtonsPerSecond: clamp(
        landingShapes[landingShape].ratePerSecond * weight * random.between(0.8, 1.2),
        10000,
        100000,
      ),
      quietSecondsBefore: random.between(2, 3),
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
            limbTakeoffDifferenceSeconds: random.between(-0.006, 0.006),
            limbTouchdownDifferenceSeconds: random.between(-0.003, 0.003),
          }),
      ...(bounds.kind === "clean" ? {} : { plateNoiseNewtons: 1.5, swayMetres: random.between(0.0004, 0.0015) }),
    };
    const straight =
      bounds.edges === "straight"
        ? {
            straightTo: 0.5,
            touchdownRateNewtonsPerSecond: random.between(10000, 30000),
            takeoffRateNewtonsPerSecond: Math.max(10000, options.takeoffRateNewtonsPerSecond ?? 10000),
          }
        : {};
    const edged = { ...options, ...straight };
    if (isPossible(edged)) return edged;
  }
  throw new RangeError(`No possible jump within these bounds for seed ${seed}.`);
}

function isPossible(options: JumpOptions): boolean {
  try {
    const body = buildBody(options, 0, createRandom(options.seed));
    const single = options.limb !== "both";
    const peak = findMaximum(body.force, 0, body.times.takeoff).value / body.weightNewtons;
    return (
      peak <= (single ? 2.4 : 3.4) &&
      body.push.depthMetres <= (single ? 0.36 : 0.58) &&
      // A landing whose velocity only grazes zero has no end that anybody could find.
      body.force(body.times.landingEnd) > 1.1 * body.weightNewtons &&
      // Leaves room for limbs landing apart before the first peak of the landing.
      body.landing.firstPeakTime > 0.0125
    );
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
