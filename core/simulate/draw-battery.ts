import type { BatteryBounds } from "./draw-parts.ts";
import { clamp, drawLimbs, drawRecording, firstPlausible } from "./draw-parts.ts";
import type { DropLandingOptions } from "./drop-landing.ts";
import { simulateDropLanding } from "./drop-landing.ts";
import type { HopsOptions } from "./hops-options.ts";
import { simulateHops } from "./repeated-hops.ts";
import { contactShapeNames, landingShapeNames, riseShapeNames } from "./shapes.ts";
import type { SquatJumpOptions } from "./squat-jump.ts";
import { simulateSquatJump } from "./squat-jump.ts";

/** Draws a plausible squat jump, without a dip. Every seed gives one. */
export function drawSquatJump(seed: number, bounds: BatteryBounds): SquatJumpOptions {
  const single = bounds.limb !== "both";
  return firstPlausible(
    seed ^ 0x51ed270b,
    (random): SquatJumpOptions => {
      const recording = drawRecording(seed, bounds, random);
      const weight = recording.massKg * 9.80665;
      const jumpHeightMetres = single ? random.between(0.06, 0.2) : random.between(0.1, 0.45);
      const holdDepthMetres = single ? random.between(0.15, 0.28) : random.between(0.25, 0.42);
      const positionAtTakeoffMetres = random.between(0.07, 0.13);
      const { differences, shares } = drawLimbs(bounds, random);
      return {
        ...recording,
        jumpHeightMetres,
        holdDepthMetres,
        positionAtTakeoffMetres,
        holdSeconds: random.between(2, 3),
        loweringSeconds: random.between(0.8, 1.4),
        riseShape: random.pick(riseShapeNames),
        timeToTakeoffSeconds:
          (holdDepthMetres + positionAtTakeoffMetres) /
          (random.between(0.48, 0.57) * Math.sqrt(2 * 9.80665 * jumpHeightMetres)),
        landingShape: random.pick(landingShapeNames),
        touchdownLowerMetres: random.between(0, Math.min(0.025, 0.15 * jumpHeightMetres)),
        takeoffRateNewtonsPerSecond: clamp(weight * random.between(9, 26), 5000, 30000),
        ...(bounds.edges === "straight"
          ? { straightTo: 0.5, touchdownRateNewtonsPerSecond: random.between(10000, 30000) }
          : {}),
        quietSecondsBefore: random.between(0.8, 1.5),
        quietSecondsAfter: random.between(2.5, 3.2),
        ...shares,
        ...differences,
      };
    },
    (options) => {
      const { truth, forceAt } = simulateSquatJump({ ...options, rateHz: 10 });
      const peak = truth.phases.propulsion.peakForce.both / truth.bodyWeightNewtons;
      return peak <= (single ? 2.2 : 3.2) && forceAt(truth.events.landingEnd) > 1.1 * truth.bodyWeightNewtons;
    },
  );
}

/** Draws a plausible drop landing. Every seed gives one. */
export function drawDropLanding(seed: number, bounds: BatteryBounds): DropLandingOptions {
  const single = bounds.limb !== "both";
  return firstPlausible(
    seed ^ 0x3c6ef372,
    (random): DropLandingOptions => {
      const recording = drawRecording(seed, bounds, random);
      const weight = recording.massKg * 9.80665;
      const boxHeightMetres = single ? random.pick([0.15, 0.2, 0.3]) : random.pick([0.2, 0.3, 0.4, 0.6]);
      const { shares } = drawLimbs(bounds, random);
      return {
        ...recording,
        boxHeightMetres,
        dropHeightEffectiveMetres: boxHeightMetres * random.between(0.84, 1),
        landingShape: random.pick(landingShapeNames),
        positionAtTouchdownMetres: random.between(0.06, 0.12),
        touchdownRateNewtonsPerSecond:
          bounds.edges === "straight"
            ? random.between(10000, 30000)
            : clamp(weight * random.between(25, 110), 10000, 100000),
        straightTo: bounds.edges === "straight" ? 0.5 : random.pick([0, 0.4]),
        emptySecondsBefore: random.between(0.8, 1.6),
        quietSecondsAfter: random.between(3.2, 3.8),
        ...(single
          ? {}
          : {
              rightShares: {
                landing: shares.rightShares?.landing ?? 0.5,
                standing: shares.rightShares?.standing ?? 0.5,
              },
              leadingLeg: random.pick(["left", "right"] as const),
              leadingFirstSeconds: random.between(0, 0.005),
            }),
      };
    },
    (options) => {
      const { truth, forceAt } = simulateDropLanding({ ...options, rateHz: 10 });
      return (
        truth.landing.peakForce.both <= (single ? 5 : 9) * truth.bodyWeightNewtons &&
        forceAt(truth.events.landingEnd) > 1.1 * truth.bodyWeightNewtons
      );
    },
  );
}

/** Draws a plausible bout of hops: 8 to 12 on two legs, 5 to 8 on one, the first slower. Every seed gives one. */
export function drawHops(seed: number, bounds: BatteryBounds): HopsOptions {
  const single = bounds.limb !== "both";
  return firstPlausible(
    seed ^ 0x6a09e667,
    (random): HopsOptions => {
      const recording = drawRecording(seed, bounds, random);
      const weight = recording.massKg * 9.80665;
      const count = single ? 5 + Math.floor(4 * random.uniform()) : 8 + Math.floor(5 * random.uniform());
      const height = single ? random.between(0.07, 0.15) : random.between(0.12, 0.36);
      const contact = single ? random.between(0.26, 0.36) : random.between(0.165, 0.23);
      const contactShape = random.pick(contactShapeNames);
      const { differences, shares } = drawLimbs(bounds, random);
      return {
        ...recording,
        entryHeightMetres: height * random.between(0.7, 1),
        hops: Array.from({ length: count }, (_, index) => ({
          contactSeconds: contact * (1 + (index < 2 ? 0.08 : 0) + 0.04 * (2 * random.uniform() - 1)),
          jumpHeightMetres: height * (1 - (index < 2 ? 0.12 : 0) + 0.06 * (2 * random.uniform() - 1)),
          contactShape,
        })),
        landingShape: random.pick(landingShapeNames),
        positionAtTakeoffMetres: random.between(0.07, 0.12),
        touchdownLowerMetres: random.between(0, 0.015),
        takeoffRateNewtonsPerSecond: clamp(weight * random.between(14, 32), 10000, 30000),
        touchdownRateNewtonsPerSecond:
          bounds.edges === "straight"
            ? random.between(10000, 30000)
            : clamp(weight * random.between(25, 100), 10000, 100000),
        straightTo: bounds.edges === "straight" ? 0.5 : random.pick([0, 0.4]),
        quietSecondsBefore: random.between(2, 3),
        quietSecondsAfter: random.between(2.5, 3.2),
        ...shares,
        ...differences,
      };
    },
    (options) => {
      const { truth, forceAt } = simulateHops({ ...options, rateHz: 10 });
      const limit = (single ? 4.2 : 7) * truth.bodyWeightNewtons;
      return (
        truth.contacts.every(
          ({ hop }) =>
            hop === undefined || Math.max(hop.braking.peakForce.both, hop.propulsion.peakForce.both) <= limit,
        ) && forceAt(truth.events.landingEnd) > 1.1 * truth.bodyWeightNewtons
      );
    },
  );
}
