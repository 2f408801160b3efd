import { expect, test } from "vitest";
import { normalGravity } from "../../core/ground/gravity.ts";

test("a place that does not exist is a mistake of the caller", () => {
  expect(() => normalGravity(91, 0)).toThrow(RangeError);
  expect(() => normalGravity(45, 20_000)).toThrow(RangeError);
  expect(() => normalGravity(Number.NaN, 0)).toThrow(RangeError);
});
