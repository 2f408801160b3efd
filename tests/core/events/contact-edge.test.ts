import { describe, expect, test } from "vitest";
import { contactEdge, contactThreshold, emptyLevel } from "../../../core/events/contact-edge.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";

const rateHz = 1000;
const weight = 700;

/** 0.2 s at 1000 N, then a straight fall of `slope` N/s to zero at `edge` (fractional sample), then empty. */
function fallingForce(slope: number, edge: number, count = 700): Float64Array {
  return Float64Array.from({ length: count }, (_, index) =>
    Math.max(0, Math.min(1000, ((edge - index) * slope) / rateHz)),
  );
}

const flight = { start: 320, end: 700 };

describe("a contact that ends along a straight line", () => {
  test.each([
    [7000, 300.37],
    [12000, 300.81],
    [30000, 300.02],
  ])("of %i N/s is left exactly where the line meets the empty level (sample %f)", (slope, edge) => {
    const signal = { rateHz, force: fallingForce(slope, edge) };
    const empty = emptyLevel(signal, flight, defaultSettings);
    const found = contactEdge(signal, 150, 500, 1, empty, weight, defaultSettings);
    expect(found).toBeCloseTo(edge, 9);
  });

  test("is carried outwards by at most 1.5 ms, and not at all below 500 Hz", () => {
    // A slope so gentle that 10 N are reached 5 ms before the edge.
    const signal = { rateHz, force: fallingForce(2000, 300) };
    const empty = emptyLevel(signal, flight, defaultSettings);
    expect(contactEdge(signal, 150, 500, 1, empty, weight, defaultSettings)).toBeCloseTo(295 + 1.5, 9);
    const slow = { rateHz: 400, force: signal.force };
    expect(contactEdge(slow, 150, 500, 1, empty, weight, defaultSettings)).toBeCloseTo(295, 9);
  });
});

test("A touchdown is found as the mirror of a take-off", () => {
  const force = fallingForce(15000, 300.4).reverse();
  const signal = { rateHz, force };
  const empty = emptyLevel(signal, { start: 0, end: 380 }, defaultSettings);
  const edge = force.length - 1 - 300.4;
  expect(contactEdge(signal, 560, 200, -1, empty, weight, defaultSettings)).toBeCloseTo(edge, 9);
});

test("A plate that rings across the threshold after take-off is left at the first crossing, not the last", () => {
  const force = fallingForce(20000, 300.5);
  for (let index = 301; index < 360; index += 1) {
    const since = (index - 300.5) / rateHz;
    force[index] = 25 * Math.exp(-since / 0.01) * Math.sin(2 * Math.PI * 90 * since);
  }
  const signal = { rateHz, force };
  const empty = emptyLevel(signal, flight, defaultSettings);
  const found = contactEdge(signal, 150, 500, 1, empty, weight, defaultSettings)!;
  // Within half a sample: the ring already adds a little to the last loaded samples' line.
  expect(Math.abs(found - 300.5)).toBeLessThan(0.5);
});

test("A dip to zero that is shorter than the hold time is no take-off", () => {
  const force = fallingForce(20000, 300.5);
  for (let index = 100; index < 110; index += 1) force[index] = 0;
  const signal = { rateHz, force };
  const found = contactEdge(signal, 50, 500, 1, emptyLevel(signal, flight, defaultSettings), weight, defaultSettings);
  expect(found).toBeCloseTo(300.5, 9);
});

test("The threshold is ten newtons above the empty level, or five of its standard deviations", () => {
  expect(contactThreshold({ newtons: 3, deviation: 1 }, defaultSettings)).toBe(13);
  expect(contactThreshold({ newtons: 3, deviation: 4 }, defaultSettings)).toBe(23);
});

test("A plate that is never left has no take-off", () => {
  const signal = { rateHz, force: new Float64Array(700).fill(800) };
  const found = contactEdge(signal, 150, 500, 1, { newtons: 0, deviation: 1 }, weight, defaultSettings);
  expect(found).toBeUndefined();
});

test.each([
  ["beyond the limit", 600],
  ["nowhere", Number.NaN],
  ["between two samples beyond it", 500.5],
])("A search that starts %s ends without an edge", (_, from) => {
  const signal = { rateHz, force: fallingForce(20000, 300.5) };
  const found = contactEdge(signal, from, 500, 1, emptyLevel(signal, flight, defaultSettings), weight, defaultSettings);
  expect(found).toBeUndefined();
});
