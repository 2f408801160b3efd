import { expect, test } from "vitest";
import { ratioInterval } from "../../core/sides/ratio-interval.ts";

test("Fieller's interval has no limits where the second number is too uncertain to divide by", () => {
  // By hand: t with 3 degrees of freedom is 3.182, so a second mean of 3 standard errors has g = 1.125.
  const { g, limits } = ratioInterval(
    { first: 5, second: 3, varianceFirst: 1, varianceSecond: 1, covariance: 0, degreesOfFreedom: 3 },
    0.95,
  );
  expect(g).toBeCloseTo(3.182446305 ** 2 / 9, 6);
  expect(limits).toBeUndefined();
});
