import type { BatteryBounds } from "./draw-parts.ts";
import { clamp, drawLimbs, drawRecording, firstPlausible } from "./draw-parts.ts";
import { simulateDropJump } from "./drop-jump.ts";
import type { DropJumpOptions } from "./drop-options.ts";
import type { Random } from "./random.ts";
import { contactShapeNames, landingShapeNames } from "./shapes.ts";

/**
 * Draws a plausible drop jump from a seed: box, effective drop, height, contact, shapes, steepness, limb shares,
 * leading leg. Every seed gives one; the same seed and bounds give the same options.
 */
export function drawDropJump(seed: number, bounds: BatteryBounds): DropJumpOptions {
  return firstPlausible(seed ^ 0x2c1b3c6d, (random) => drawOnce(seed, bounds, random), isPlausible);
}

function drawOnce(seed: number, bounds: BatteryBounds, random: Random): DropJumpOptions {
  const single = bounds.limb !== "both";
  const recording = drawRecording(seed, bounds, random);
  const weight = recording.massKg * 9.80665;
  const boxHeightMetres = single ? random.pick([0.15, 0.2, 0.25]) : random.pick([0.2, 0.3, 0.4, 0.5]);
  const jumpHeightMetres = single ? random.between(0.085, 0.2) : random.between(0.12, 0.45);
  const { shares, differences } = drawLimbs(bounds, random);
  const edge = (): number =>
    bounds.edges === "straight" ? random.between(10000, 30000) : clamp(weight * random.between(20, 110), 10000, 100000);
  const { limbTakeoffDifferenceSeconds, limbTouchdownDifferenceSeconds } = differences;
  return {
    ...recording,
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
    touchdownRateNewtonsPerSecond: edge(),
    landingRateNewtonsPerSecond: edge(),
    straightTo: bounds.edges === "straight" ? 0.5 : random.pick([0, 0.4]),
    emptySecondsBefore: random.between(0.8, 1.6),
    quietSecondsAfter: random.between(2.5, 3.2),
    ...shares,
    ...(single
      ? {}
      : {
          leadingLeg: random.pick(["left", "right"] as const),
          leadingFirstSeconds: random.between(0.001, 0.006),
          leadingBrakingGain: random.between(0.01, 0.05),
          ...(limbTakeoffDifferenceSeconds === undefined ? {} : { limbTakeoffDifferenceSeconds }),
          ...(limbTouchdownDifferenceSeconds === undefined
            ? {}
            : { limbLandingDifferenceSeconds: limbTouchdownDifferenceSeconds }),
        }),
  };
}

function isPlausible(options: DropJumpOptions): boolean {
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
}
