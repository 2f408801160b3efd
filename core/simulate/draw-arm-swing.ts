import { buildBody } from "./body.ts";
import { type DrawBounds, drawJump } from "./draw-jump.ts";
import { firstPlausible } from "./draw-parts.ts";
import type { JumpOptions } from "./options.ts";
import { findMaximum } from "./quadrature.ts";
import { createRandom } from "./random.ts";

const bothHeights = [0.15, 0.6] as const;
const singleHeights = [0.08, 0.28] as const;

/** The largest force of a push in body weights. */
const mostWeights = { both: 3.6, single: 2.6 } as const;

/**
 * Draws a plausible countermovement jump with arm swing. The motion is that of the whole body's centre of mass, arms
 * included, so force follows from it as in every jump: it takes longer, force rises late to its peak, while the arms
 * swing up, and the raised arms lift the centre of mass at take-off. No arm is modelled by itself. Every seed gives one.
 */
export function drawArmSwingJump(seed: number, bounds: DrawBounds): JumpOptions {
  const single = bounds.limb !== "both";
  const heightMetres = bounds.heightMetres ?? (single ? singleHeights : bothHeights);
  return firstPlausible(
    seed ^ 0x2545f491,
    (random): JumpOptions => {
      const plain = drawJump(Math.floor(random.between(0, 2 ** 31)), { ...bounds, heightMetres });
      return {
        ...plain,
        seed,
        pushShape: random.pick(["late-rise", "slow-dip"] as const),
        timeToTakeoffSeconds: (plain.timeToTakeoffSeconds ?? 0.8) + random.between(0.05, 0.15),
        positionAtTakeoffMetres: random.between(0.12, 0.2),
        // The arms come down in flight, so the body is met lower than it left.
        touchdownLowerMetres: random.between(0.005, 0.03),
      };
    },
    (options) => {
      const body = buildBody(options, 0, createRandom(seed));
      const peak = findMaximum(body.force, 0, body.times.takeoff).value / body.weightNewtons;
      return (
        peak <= (single ? mostWeights.single : mostWeights.both) &&
        body.push.depthMetres <= (single ? 0.36 : 0.6) &&
        body.force(body.times.landingEnd) > 1.1 * body.weightNewtons &&
        body.landing.firstPeakTime > 0.0125
      );
    },
  );
}
