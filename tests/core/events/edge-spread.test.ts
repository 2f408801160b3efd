import { describe, expect, test } from "vitest";
import { contactEdge, emptyLevel } from "../../../core/events/contact-edge.ts";
import { withSpreads } from "../../../core/events/edge-spread.ts";
import type { JumpMotion } from "../../../core/events/jump-events.ts";
import { integrate } from "../../../core/events/kinematics.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";

// A contact of 1000 N that ends along a straight line at sample 300, at 1000 Hz; then an empty plate until 700.
const rateHz = 1000;
const edge = 300;
const weight = 700;
const flight = { start: 320, end: 700 };
const nowhere = { start: 700, end: 700 };

/** The take-off where the program places it, and its spread there. */
function foundWithSpread(newtonsAt: (index: number) => number, settings: Settings = defaultSettings) {
  const force = Float64Array.from({ length: 700 }, (_, index) => newtonsAt(index));
  const empty = emptyLevel({ rateHz, force }, flight, defaultSettings);
  const found = contactEdge({ rateHz, force }, 150, 500, 1, empty, weight, settings)!;
  return { found, spread: spreadOf(newtonsAt, found, settings) };
}

function spreadOf(newtonsAt: (index: number) => number, takeoff: number, settings: Settings = defaultSettings): number {
  const force = Float64Array.from({ length: 700 }, (_, index) => newtonsAt(index));
  const total = { rateHz, force };
  const motion = integrate(total, { start: 0, end: 700 }, weight, defaultSettings.gravity);
  const jump: JumpMotion = { test: "dropJump", motion, anchor: { kind: "flight" }, events: { takeoff }, contacts: [] };
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
  const detection = { test: "dropJump", total, limbs: [], cut, edits: [], settings } as const;
  return withSpreads(jump, { ...detection, weight: { newtons: weight, deviation: 0 } }).spreads!.takeoff!;
}

/** The spread of a touchdown at the end of a flight. */
function spreadOfTouchdown(newtonsAt: (index: number) => number, touchdown: number): number {
  const force = Float64Array.from({ length: 700 }, (_, index) => newtonsAt(index));
  const total = { rateHz, force };
  const motion = integrate(total, { start: 0, end: 700 }, weight, defaultSettings.gravity);
  const events = { touchdown };
  const jump: JumpMotion = { test: "dropLanding", motion, anchor: { kind: "flight" }, events, contacts: [] };
  const cut = {
    kind: "drop",
    span: { start: 0, end: 700 },
    contact: nowhere,
    flight: { start: 0, end: 380 },
    landed: true,
    landing: { start: 380, end: 700 },
    lastLanding: { start: 380, end: 700 },
    quietBefore: [],
    quietEarlier: [],
    quietAfter: nowhere,
    laterFlights: [],
  } as const;
  const detection = { test: "dropLanding", total, limbs: [], cut, edits: [], settings: defaultSettings } as const;
  return withSpreads(jump, { ...detection, weight: { newtons: weight, deviation: 0 } }).spreads!.touchdown!;
}

const line = (slope: number) => (index: number) => Math.max(0, Math.min(1000, ((edge - index) * slope) / rateHz));

test("A steep edge on a quiet plate has no spread of its own", () => {
  expect(spreadOf(line(20000), edge)).toBeLessThan(1e-6);
});

test("What the limit of 1.5 ms withholds is a rectangular uncertainty", () => {
  // At 2000 N/s ten newtons are reached 5 ms before the edge; carried by 1.5 ms, 3.5 ms are missing: 3.5/√3.
  expect(spreadOf(line(2000), edge - 3.5)).toBeCloseTo(3.5 / Math.sqrt(3), 9);
});

test("A plate that rings across the threshold again spreads a take-off by that time over √3", () => {
  const steep = line(20000);
  const ringing = (index: number) => (index >= edge + 5 && index < edge + 9 ? 30 : steep(index));
  // The first sample below ten newtons is 300; 305 is above them again.
  expect(spreadOf(ringing, edge)).toBeCloseTo(5 / Math.sqrt(3), 6);
});

test("Load before a touchdown, even beyond an empty stretch, is contact already: all the way to the outermost counts", () => {
  // The take-off of the ringing plate above mirrored in time, so that its edge is a touchdown at 399 of samples 0 to 699,
  // and a second swing further out: the last sample below ten newtons is 399, loaded ones are 390 to 394 and 385 to 386.
  const steep = line(20000);
  const ringing = (index: number) =>
    (index >= edge + 5 && index < edge + 10) || (index >= edge + 13 && index < edge + 15) ? 30 : steep(index);
  // The outermost, 385, lies 14 samples from the first one off the plate.
  expect(spreadOfTouchdown((index) => ringing(699 - index), 699 - edge)).toBeCloseTo(14, 6);
});

test("Noise of the plate spreads a gentle edge more than a steep one", () => {
  // Alternating ± 4 N has a standard deviation of 4 N and leaves the edge where it is.
  const noisy = (slope: number) => (index: number) => line(slope)(index) + (index % 2 === 0 ? 4 : -4);
  const steep = foundWithSpread(noisy(20000)).spread;
  expect(foundWithSpread(noisy(2000)).spread).toBeGreaterThan(2 * steep);
  expect(steep).toBeGreaterThan(0.05);
});

test("An event kept outside its line by its crossing is uncertain by four fifths of what lies between", () => {
  // 100 N a sample from 300.4 on: the last loaded sample, 300, shows 40 N. Its crossing of ten newtons lies 30/40 of a
  // sample beyond it, the line's end 0.4: known to be 0.35 too far, and not corrected.
  const force = (index: number): number => Math.max(0, Math.min(1000, (300.4 - index) * 100));
  const { found, spread } = foundWithSpread(force);
  expect(found).toBeCloseTo(300.75, 9);
  expect(spread).toBeCloseTo(0.8 * 0.35, 9);
});

describe("a force that fades with the square of time", () => {
  // Newtons at 1 ms and 10 ms before the edge of 300.3: from a hard end to one that the carrying can hardly follow.
  test.each([4, 8, 16, 32, 64])(
    "of %i N at one millisecond deceives the line by no more than 1.96 of its spread",
    (k) => {
      const fading = (index: number): number => Math.min(1000, k * Math.max(0, 300.3 - index) ** 2);
      const { found, spread } = foundWithSpread(fading);
      expect(found).toBeLessThan(300.3);
      expect(Math.abs(found - 300.3)).toBeLessThanOrEqual(1.96 * spread);
    },
  );

  test("counts at most the shape term of one millisecond", () => {
    // So gentle that the two lines end 4 ms apart, and the limit of carrying withholds nothing but part of that.
    const settings = { ...defaultSettings, contactCarrySeconds: 0.005 };
    const fading = (index: number): number => Math.min(1000, 1.2 * Math.max(0, 300.3 - index) ** 2);
    const upper = settings.takeoffShapeSeconds * rateHz;
    expect(foundWithSpread(fading, settings).spread).toBeCloseTo(upper, 9);
  });
});

test("A nearly flat edge is uncertain by the hold over √3 and by no more", () => {
  // The last loaded samples differ by a billionth of a newton, so that their line reaches the empty level nowhere near.
  const flat = (index: number) => (index < edge ? 1000 - Math.max(0, index - 200) * 9.7 - index * 1e-9 : 0);
  const held = (index: number) => (index >= edge - 10 && index < edge ? flat(edge - 10) - index * 1e-9 : flat(index));
  expect(foundWithSpread(held).spread).toBeCloseTo(30 / Math.sqrt(3), 9);
});

test("Load that the first sample off the plate still shows widens a take-off that lies before it", () => {
  // Twenty newtons a sample until 299.7, where the line puts the event; sample 300 still has 6 N: 0.3 samples to it and
  // 6/20 beyond.
  const withFoot = (index: number) => (index === edge ? 6 : Math.max(0, Math.min(1000, (edge - 0.3 - index) * 20)));
  const { spread, found } = foundWithSpread(withFoot);
  expect(found).toBeCloseTo(edge - 0.3, 9);
  expect(spread).toBeCloseTo(0.6, 9);
});

test("A flank that begins more steeply than its line widens the edge by what its bend and the first empty sample say", () => {
  // Inwards from the edge 20, 32, 40 N and then 8 N a sample: the line through the first two reaches zero behind the edge.
  const bent = (index: number) => {
    const inwards = edge - index;
    if (inwards <= 0) return 0;
    return inwards === 1 ? 20 : inwards === 2 ? 32 : Math.min(1000, 32 + (inwards - 2) * 8);
  };
  const { spread, found } = foundWithSpread(bent);
  expect(found).toBeGreaterThan(edge);
  expect(spread).toBeGreaterThanOrEqual((found - edge) / 2);
});

test("A bend that noise cannot make counts in full beside what noise leaves in the line", () => {
  // Inwards 20 N, 52 N, then 8 N a sample: the next part is less steep by 24 N a sample.
  const bent = (index: number) => {
    const inwards = edge - index;
    return inwards <= 0 ? 0 : inwards === 1 ? 20 : Math.min(1000, 52 + (inwards - 2) * 8);
  };
  const onNoisyPlate = (index: number) => (index < 340 ? bent(index) : index % 2 === 0 ? 1 : -1);
  // By hand: the line's two samples and the seven of the next part, up to three heights of the flank, have middles 4.5
  // samples apart. Half the way to the empty level, 20/32 of a sample, the slope has grown by 24/4.5 · (0.5 + 0.3125).
  const bend = 20 / 32 - 20 / (32 + (24 / 4.5) * (0.5 + 0.3125));
  const quiet = foundWithSpread(bent);
  expect(quiet.found).toBeCloseTo(edge - 1 + 20 / 32, 9);
  expect(quiet.spread).toBeCloseTo(bend, 9);
  // 1 N of noise, of slope 32 N a sample, with the lever of two samples that lie 0.5 on either side of their middle: more
  // than half the bend. The slopes still differ by sixteen of their deviations.
  const noise = (1 / 32) * Math.sqrt(1 / 2 + (20 / 32 + 0.5) ** 2 / 0.5);
  expect(foundWithSpread(onNoisyPlate).spread).toBeCloseTo(Math.hypot(noise, bend), 3);
});
