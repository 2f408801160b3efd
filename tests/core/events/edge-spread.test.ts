import { expect, test } from "vitest";
import { withSpreads } from "../../../core/events/edge-spread.ts";
import type { JumpMotion } from "../../../core/events/jump-events.ts";
import { integrate } from "../../../core/events/kinematics.ts";
import { defaultSettings } from "../../../core/settings.ts";

// A contact of 1000 N that ends along a straight line at sample 300, at 1000 Hz; then an empty plate until 700.
const rateHz = 1000;
const edge = 300;
const weight = 700;
const nowhere = { start: 700, end: 700 };

function spreadOf(newtonsAt: (index: number) => number, takeoff: number): number {
  const force = Float64Array.from({ length: 700 }, (_, index) => newtonsAt(index));
  const total = { rateHz, force };
  const motion = integrate(total, { start: 0, end: 700 }, weight, defaultSettings.gravity);
  const jump: JumpMotion = { test: "dropJump", motion, anchor: { kind: "flight" }, events: { takeoff }, contacts: [] };
  const flight = { start: 320, end: 700 };
  const cut = {
    kind: "drop",
    span: { start: 0, end: 700 },
    contact: { start: 0, end: 320 },
    flight,
    landed: false,
    landing: nowhere,
    lastLanding: nowhere,
    quietBefore: [],
    quietEarlier: [],
    quietAfter: nowhere,
    laterFlights: [],
  } as const;
  const detection = { test: "dropJump", total, limbs: [], cut, edits: [], settings: defaultSettings } as const;
  return withSpreads(jump, { ...detection, weight: { newtons: weight, deviation: 0 } }).spreads!.takeoff!;
}

const line = (slope: number) => (index: number) => Math.max(0, Math.min(1000, ((edge - index) * slope) / rateHz));

test("A steep edge on a quiet plate has no spread of its own", () => {
  expect(spreadOf(line(20000), edge)).toBeLessThan(1e-6);
});

test("What the limit of 1.5 ms withholds is a rectangular uncertainty", () => {
  // At 2000 N/s ten newtons are reached 5 ms before the edge; carried by 1.5 ms, 3.5 ms are missing: 3.5/√3.
  expect(spreadOf(line(2000), edge - 3.5)).toBeCloseTo(3.5 / Math.sqrt(3), 9);
});

test("A plate that rings across the threshold again spreads the edge by that time over √3", () => {
  const steep = line(20000);
  const ringing = (index: number) => (index >= edge + 5 && index < edge + 9 ? 30 : steep(index));
  // The first sample below ten newtons is 300; 305 is above them again.
  expect(spreadOf(ringing, edge)).toBeCloseTo(5 / Math.sqrt(3), 6);
});

test("Noise of the plate spreads a gentle edge more than a steep one", () => {
  // Alternating ± 4 N has a standard deviation of 4 N and leaves the edge where it is.
  const noisy = (slope: number) => (index: number) => line(slope)(index) + (index % 2 === 0 ? 4 : -4);
  const steep = spreadOf(noisy(20000), edge);
  expect(spreadOf(noisy(2000), edge)).toBeGreaterThan(2 * steep);
  expect(steep).toBeGreaterThan(0.05);
});
