import { describe, expect, it } from "vitest";
import { drawSquatJump } from "../../../core/simulate/draw-battery.ts";
import { riseShapeNames } from "../../../core/simulate/shapes.ts";
import type { SquatJumpOptions } from "../../../core/simulate/squat-jump.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import { integrateFinely } from "./integrate-finely.ts";

const gravity = 9.80665;
const plain: SquatJumpOptions = {
  seed: 2,
  rateHz: 1000,
  massKg: 70,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.28,
};
const drawn = Array.from({ length: 16 }, (_, index) =>
  drawSquatJump(2 * index, {
    limb: (["both", "left", "right", "both"] as const)[index % 4] ?? "both",
    plates: index % 2 === 0 ? "two" : "one",
    kind: index % 3 === 0 ? "clean" : "noisy",
  }),
);

describe("a simulated squat jump", () => {
  it.each(riseShapeNames)("meets its height and holds still before a rise of shape %s", (riseShape) => {
    const { truth, forceAt, positionAt, velocityAt } = simulateSquatJump({ ...plain, riseShape });
    expect(Math.abs(truth.jumpHeightMetres - 0.28)).toBeLessThan(1e-12);
    const { holdStart, firstMovement, takeoff } = truth.events;
    expect(firstMovement - holdStart).toBeCloseTo(2.4, 9);
    for (const time of [holdStart + 0.01, firstMovement - 0.01]) {
      expect(forceAt(time)).toBeCloseTo(70 * gravity, 8);
      expect(positionAt(time)).toBeCloseTo(-truth.holdDepthMetres, 12);
    }
    expect(velocityAt(takeoff)).toBeCloseTo(truth.takeoffVelocity, 9);
    // Never below body weight before the last fall: nothing that could be taken for a countermovement.
    for (let time = firstMovement; time < takeoff - 0.12; time += 0.005) {
      expect(forceAt(time)).toBeGreaterThan(70 * gravity - 1e-6);
    }
  });

  it("agrees with a fine integration of the force", () => {
    // Trapezoid error: step²/12 times the jumps of slope, under 1e-7 m/s with edges of 100 kN/s.
    const tolerance = 1e-6;
    for (const options of drawn.slice(0, 5)) {
      const jump = simulateSquatJump(options);
      const { holdStart, takeoff, touchdown, landingEnd } = jump.truth.events;
      const [left, down, landed] = integrateFinely(jump, holdStart, [takeoff, touchdown, landingEnd]);
      expect(Math.abs((left?.velocity ?? Number.NaN) - jump.truth.takeoffVelocity)).toBeLessThan(tolerance);
      expect(Math.abs((down?.velocity ?? Number.NaN) - jump.truth.touchdownVelocity)).toBeLessThan(tolerance);
      expect(Math.abs(landed?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
    }
  });

  it("flies by the ballistic law and never pulls on a plate", () => {
    for (const options of drawn) {
      const { truth, plates } = simulateSquatJump({ ...options, plateNoiseNewtons: 0 });
      const fall = truth.positionAtTakeoffMetres - truth.positionAtTouchdownMetres;
      const { takeoffVelocity: up, flightSeconds } = truth;
      expect(Math.abs(up * flightSeconds - (gravity * flightSeconds ** 2) / 2 + fall)).toBeLessThan(1e-12);
      for (const plate of plates) expect(plate.force.every((force) => force > -1e-9)).toBe(true);
    }
  });

  it("dips by the wanted part of the weight, and as deep as its impulse says", () => {
    const { truth, forceAt, velocityAt } = simulateSquatJump({
      ...plain,
      dip: { weightFraction: 0.08, seconds: 0.3 },
    });
    const { firstMovement, lowestPosition } = truth.events;
    expect(forceAt(firstMovement + 0.15) / (70 * gravity)).toBeCloseTo(0.92, 9);
    // By hand: the mean of the two eases is half the depth of the dip, so v = −g·0.08·0.3/2 at its end.
    expect(velocityAt(firstMovement + 0.3)).toBeCloseTo((-gravity * 0.08 * 0.3) / 2, 9);
    expect(Math.abs(velocityAt(lowestPosition))).toBeLessThan(1e-9);
    expect(truth.dipMetres).toBeGreaterThan(0.017);
    expect(truth.takeoffVelocity).toBeCloseTo(Math.sqrt(2 * gravity * 0.28), 12);
  });

  it("can begin in the hold", () => {
    const { truth, forceAt } = simulateSquatJump({ ...plain, startsInHold: true });
    expect(truth.events.holdStart).toBeLessThan(0.001);
    expect(forceAt(0)).toBeCloseTo(70 * gravity, 9);
  });
});
