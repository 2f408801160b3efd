import { expect, test } from "vitest";
import { integrate } from "../../../core/events/kinematics.ts";
import { weightCrossing } from "../../../core/events/turning-points.ts";

test("The end of unweighting is the crossing at the most negative velocity, not one that noise makes after it", () => {
  // Net force −10, +3, −2, +30 N at four samples: velocity is least where force first rises through the weight.
  const weight = 700;
  const force = Float64Array.from([-10, -10, 3, -2, 30, 30], (net) => weight + net);
  const motion = integrate({ rateHz: 1000, force }, { start: 0, end: force.length }, weight, 9.80665);
  // Between samples 1 (−10 N) and 2 (+3 N) the straight line crosses at 10/13 of the way, by hand.
  expect(weightCrossing(motion, 2, 3)).toBeCloseTo(1 + 10 / 13, 9);
});
