import { expect, test } from "vitest";
import { orderStatistic } from "../../../core/recording/order-statistic.ts";

// The second implementation is the sort of the language.

/** A linear congruential sequence from 0 to 1: the same in every run. */
function draws(count: number): number[] {
  let state = 1;
  return Array.from({ length: count }, () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  });
}

const orders: readonly (readonly [string, Float64Array])[] = [
  ["one value", Float64Array.of(3)],
  ["numbers in no order", Float64Array.from(draws(500))],
  ["many alike", Float64Array.from(draws(500), (value) => Math.floor(5 * value))],
  ["all alike", new Float64Array(300).fill(7)],
  ["rising", Float64Array.from({ length: 300 }, (_, index) => index)],
  ["falling", Float64Array.from({ length: 300 }, (_, index) => -index)],
  ["a tent", Float64Array.from({ length: 301 }, (_, index) => -Math.abs(index - 150))],
  [
    "holes and infinities",
    Float64Array.from(draws(200), (value) => (value < 0.2 ? Number.NaN : 1 / (value < 0.3 ? 0 : value))),
  ],
];

test.each(orders)("every rank of %s is what stands there after sorting", (_, values) => {
  const sorted = values.slice().sort();
  for (const [rank, expected] of sorted.entries()) expect(orderStatistic(values.slice(), rank)).toBe(expected);
});
