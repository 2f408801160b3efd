import { describe, expect, it } from "vitest";
import { simulateBrokenOffJump } from "../../../core/simulate/broken-off-jump.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import type { JumpOptions } from "../../../core/simulate/options.ts";
import { isFinalSeed, rightShareFromIndex } from "../../../core/simulate/options.ts";

const clean: JumpOptions = {
  seed: 6,
  rateHz: 1000,
  massKg: 70,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.28,
};
const weight = 70 * 9.80665;
const sumAt = (jump: { plates: readonly { force: Float64Array }[] }, index: number): number =>
  jump.plates.reduce((sum, plate) => sum + (plate.force[index] ?? Number.NaN), 0);

describe("what a plate adds", () => {
  it("noise is white and of the wanted size, on each plate its own", () => {
    const quiet = simulateCountermovementJump(clean);
    const noisy = simulateCountermovementJump({ ...clean, plateNoiseNewtons: 1.5 });
    const noise = noisy.plates.map((plate, side) => plate.force.map((f, i) => f - (quiet.plates[side]?.force[i] ?? 0)));
    for (const each of noise) {
      const variance = each.reduce((sum, value) => sum + value * value, 0) / each.length;
      const lagged = each.reduce((sum, value, index) => sum + value * (each[index - 1] ?? 0), 0) / each.length;
      // 6500 samples: the SD is known to 0.9 %, the lag-one correlation to 0.012; four of each are allowed.
      expect(Math.abs(Math.sqrt(variance) - 1.5)).toBeLessThan(1.5 * 0.036);
      expect(Math.abs(lagged / variance)).toBeLessThan(0.05);
    }
    expect(noise[0]).not.toEqual(noise[1]);
  });

  it("ringing swings about zero after take-off and after touchdown and dies away", () => {
    const ringing = { newtons: 30, frequencyHz: 90, decaySeconds: 0.015 };
    const still = simulateCountermovementJump(clean);
    const rung = simulateCountermovementJump({ ...clean, ringing });
    const { takeoff, touchdown } = rung.truth.events;
    const added = Array.from({ length: rung.sampleCount }, (_, index) => sumAt(rung, index) - sumAt(still, index));
    const within = (from: number, to: number): number[] => added.slice(Math.ceil(from * 1000), Math.floor(to * 1000));
    expect(Math.max(...within(takeoff, takeoff + 0.02))).toBeGreaterThan(5);
    expect(Math.min(...within(takeoff, takeoff + 0.02))).toBeLessThan(-5);
    expect(Math.max(...within(touchdown, touchdown + 0.02))).toBeGreaterThan(15);
    // By hand: after ten decay times e^-10 of 30 N is 0.0014 N.
    expect(Math.max(...within(takeoff + 0.16, touchdown).map(Math.abs))).toBeLessThan(0.01);
    expect(within(0, takeoff).every((value) => value === 0)).toBe(true);
  });

  it("quantisation leaves whole steps only", () => {
    const jump = simulateCountermovementJump({ ...clean, plateNoiseNewtons: 1.5, quantisationNewtons: 0.5 });
    expect(jump.plates.every((plate) => plate.force.every((force) => Number.isInteger(force * 2)))).toBe(true);
  });

  it("clipping makes a flat top of many equal samples, and no unclipped shape has five", () => {
    const longestTop = (jump: { plates: readonly { force: Float64Array }[] }): number =>
      Math.max(
        ...jump.plates.map(({ force }) => {
          const top = Math.max(...force);
          let longest = 0;
          let run = 0;
          for (const value of force) {
            run = value === top ? run + 1 : 0;
            longest = Math.max(longest, run);
          }
          return longest;
        }),
      );
    expect(longestTop(simulateCountermovementJump({ ...clean, clipNewtons: 900 }))).toBeGreaterThan(20);
    for (let seed = 0; seed < 40; seed += 2) {
      const still = drawJump(seed, { limb: "both", plates: "two", kind: "clean" });
      const noisy = drawJump(seed, { limb: "both", plates: "two", kind: "noisy" });
      expect(longestTop(simulateCountermovementJump(still))).toBeLessThan(5);
      expect(longestTop(simulateCountermovementJump({ ...noisy, quantisationNewtons: 0.1 }))).toBeLessThan(5);
    }
  });

  it("offset and sign are those asked for", () => {
    const still = simulateCountermovementJump(clean);
    const shifted = simulateCountermovementJump({ ...clean, plateOffsetsNewtons: [25, -4], signTurned: true });
    expect(shifted.plates[0]?.force[100]).toBeCloseTo(-((still.plates[0]?.force[100] ?? 0) + 25), 9);
    expect(shifted.plates[1]?.force[100]).toBeCloseTo(-((still.plates[1]?.force[100] ?? 0) - 4), 9);
  });
});

describe("deliberately bad trials", () => {
  it("facing the wrong way puts the right foot on the plate named left", () => {
    const rightShares = { standing: 0.5, braking: 0.4, propulsion: 0.45, landing: 0.4 };
    const forward = simulateCountermovementJump({ ...clean, rightShares });
    const turned = simulateCountermovementJump({ ...clean, rightShares, facedWrongWay: true });
    expect(turned.plates.map(({ name, limb }) => `${name}: ${limb}`)).toEqual(["left: right", "right: left"]);
    expect(turned.plates[0]?.force).toEqual(forward.plates[1]?.force);
    expect(turned.truth).toEqual(forward.truth);
  });

  it("a hand on the rail lowers the weighing by its part and nothing after the dip", () => {
    const free = simulateCountermovementJump(clean);
    const held = simulateCountermovementJump({ ...clean, railWeightFraction: 0.034 });
    expect(sumAt(held, 1000) / weight).toBeCloseTo(1 - 0.034, 9);
    const after = Math.ceil((held.truth.events.firstMovement + 0.25) * 1000);
    for (const index of [after, after + 200, held.sampleCount - 1]) expect(sumAt(held, index)).toBe(sumAt(free, index));
  });

  it("starting in mid-movement has no quiet standing", () => {
    const jump = simulateCountermovementJump({ ...clean, startsAfterFirstMovementSeconds: 0.25 });
    expect(jump.truth.events.firstMovement).toBeLessThan(0);
    expect(sumAt(jump, 0) / weight).toBeLessThan(0.9);
  });

  it("landing beside the plates leaves them empty", () => {
    const jump = simulateCountermovementJump({ ...clean, landsBesidePlates: true });
    const from = Math.ceil(jump.truth.events.takeoff * 1000) + 1;
    expect(jump.plates.every((plate) => plate.force.slice(from).every((force) => force === 0))).toBe(true);
  });

  it("the other foot presses the newtons asked for and the working leg that much less", () => {
    const single: JumpOptions = { ...clean, limb: "left", jumpHeightMetres: 0.14, otherFootNewtons: 45 };
    const jump = simulateCountermovementJump(single);
    expect(Math.max(...(jump.plates[1]?.force ?? []))).toBeCloseTo(45, 3);
    const index = Math.round((jump.truth.events.firstMovement + 0.3) * 1000);
    expect(sumAt(jump, index)).toBeCloseTo(jump.forceAt(index / 1000), 9);
  });

  it("a weight shift moves load between the feet and is over before the first movement", () => {
    const weightShift = { metres: 0.004, rightShareChange: 0.1, seconds: 1, endsBeforeSeconds: 0.3 };
    const jump = simulateCountermovementJump({ ...clean, weightShift, quietSecondsBefore: 3 });
    const middle = Math.round((jump.truth.events.firstMovement - 0.8) * 1000);
    expect((jump.plates[1]?.force[middle] ?? 0) / sumAt(jump, middle)).toBeCloseTo(0.6, 4);
    expect(jump.positionAt(jump.truth.events.firstMovement - 0.8)).toBeCloseTo(0.004, 12);
    expect(jump.positionAt(jump.truth.events.firstMovement)).toBe(0);
    expect(Math.abs(jump.truth.jumpHeightMetres - 0.28)).toBeLessThan(1e-12);
  });

  it("a rise before the dip is the first movement and does not change what is reached", () => {
    const jump = simulateCountermovementJump({ ...clean, riseBeforeDip: { weightFraction: 0.04, seconds: 0.2 } });
    const { firstMovement } = jump.truth.events;
    expect(jump.forceAt(firstMovement + 0.1) / weight).toBeCloseTo(1.04, 9);
    expect(Math.abs(jump.velocityAt(jump.truth.events.takeoff) - Math.sqrt(2 * 9.80665 * 0.28))).toBeLessThan(1e-12);
  });

  it("stepping on begins with an empty plate and ends in quiet standing", () => {
    const jump = simulateCountermovementJump({ ...clean, emptySecondsBefore: 1 });
    expect(sumAt(jump, 900)).toBe(0);
    expect(sumAt(jump, 1600)).toBeCloseTo(weight, 9);
    expect(jump.truth.events.firstMovement).toBeGreaterThan(3.5);
  });

  it("a jump broken off dips, returns and never leaves the plate", () => {
    const attempt = simulateBrokenOffJump({ seed: 8, rateHz: 1000, massKg: 70, plates: "two", depthMetres: 0.2 });
    const sums = Array.from({ length: attempt.sampleCount }, (_, index) => sumAt(attempt, index));
    expect(Math.min(...sums)).toBeGreaterThan(0.3 * weight);
    expect(Math.max(...sums)).toBeGreaterThan(1.2 * weight);
    // The displacement returns, so the net impulse of the whole recording is zero; samples sum it to rounding of the bump.
    const net = sums.reduce((sum, force) => sum + force - weight, 0) / 1000;
    expect(Math.abs(net)).toBeLessThan(1e-3);
  });

  it("a jump no legs can make is refused by name", () => {
    expect(() => simulateCountermovementJump({ ...clean, jumpHeightMetres: 0.6, timeToTakeoffSeconds: 0.4 })).toThrow(
      /No push of shape even lasting 0.4 s/,
    );
  });
});

describe("drawing jumps", () => {
  it("keeps the odd seeds for the final tables", () => {
    expect([0, 1, 2, 3, -1].map(isFinalSeed)).toEqual([false, true, false, true, true]);
  });

  it("gives every shape, the whole range of heights and masses, and the same options again", () => {
    const options = Array.from({ length: 200 }, (_, seed) =>
      drawJump(seed, { limb: "both", plates: "two", kind: "noisy" }),
    );
    expect(new Set(options.map((each) => each.pushShape)).size).toBe(6);
    expect(new Set(options.map((each) => each.landingShape)).size).toBe(4);
    const heights = options.map((each) => each.jumpHeightMetres);
    const masses = options.map((each) => each.massKg);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(0.1);
    expect(Math.min(...heights)).toBeLessThan(0.15);
    expect(Math.max(...heights)).toBeLessThanOrEqual(0.55);
    expect(Math.max(...heights)).toBeGreaterThan(0.5);
    expect(Math.min(...masses)).toBeGreaterThanOrEqual(45);
    expect(Math.max(...masses)).toBeLessThanOrEqual(120);
    expect(drawJump(17, { limb: "both", plates: "two", kind: "noisy" })).toEqual(options[17]);
  });

  it("converts an index to the right limb's part", () => {
    // By hand: 66 % of the other side is 66/166 of the total.
    expect(rightShareFromIndex(66, "right")).toBeCloseTo(66 / 166, 15);
    expect(rightShareFromIndex(66, "left")).toBeCloseTo(100 / 166, 15);
  });
});
