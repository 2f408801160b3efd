import { expect, test } from "vitest";
import { Remembered } from "../../../core/measures/remembered.ts";

/** Counts how often something is really computed. */
function counting() {
  const remembered = new Remembered<number>();
  let computed = 0;
  const sumOf = (source: Float64Array, ...inputs: readonly number[]): number =>
    remembered.of(source, inputs, () => {
      computed += 1;
      return inputs.reduce((sum, each) => sum + each, source[0]!);
    });
  return { sumOf, computed: () => computed };
}

test("the same samples and the same numbers are computed once", () => {
  const { sumOf, computed } = counting();
  const samples = Float64Array.of(10);
  expect([sumOf(samples, 1, 2), sumOf(samples, 1, 2), sumOf(samples, 1, Number.NaN)]).toEqual([13, 13, Number.NaN]);
  expect(sumOf(samples, 1, Number.NaN)).toBeNaN();
  expect(computed()).toBe(2);
});

test("one other number, a zero of the other sign or other samples are computed anew", () => {
  const { sumOf, computed } = counting();
  const samples = Float64Array.of(10);
  expect(sumOf(samples, 1, 0)).toBe(11);
  expect(sumOf(samples, 1, -0)).toBe(11);
  expect(sumOf(samples, 1 + Number.EPSILON, 0)).toBe(11);
  expect(sumOf(Float64Array.of(20), 1, 0)).toBe(21);
  expect(computed()).toBe(4);
});

test("what was asked for long ago is forgotten, and right when it is asked for again", () => {
  const { sumOf, computed } = counting();
  const samples = Float64Array.of(10);
  for (let input = 0; input < 100; input += 1) expect(sumOf(samples, input)).toBe(10 + input);
  expect(sumOf(samples, 99)).toBe(109);
  expect(computed()).toBe(100);
  expect(sumOf(samples, 0)).toBe(10);
  expect(computed()).toBe(101);
});
