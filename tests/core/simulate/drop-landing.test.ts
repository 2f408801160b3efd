import { describe, expect, it } from "vitest";
import { drawDropLanding } from "../../../core/simulate/draw-battery.ts";
import type { DropLandingOptions } from "../../../core/simulate/drop-landing.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { integrateFinely } from "./integrate-finely.ts";

const gravity = 9.80665;
const plain: DropLandingOptions = {
  seed: 2,
  rateHz: 1000,
  massKg: 70,
  limb: "both",
  plates: "two",
  boxHeightMetres: 0.3,
  dropHeightEffectiveMetres: 0.28,
};
const drawn = Array.from({ length: 16 }, (_, index) =>
  drawDropLanding(2 * index, {
    limb: (["both", "left", "right", "both"] as const)[index % 4] ?? "both",
    plates: index % 2 === 0 ? "two" : "one",
    kind: index % 3 === 0 ? "clean" : "noisy",
  }),
);

describe("a simulated drop landing", () => {
  it("arrives with the velocity of the effective drop height and comes to rest in standing", () => {
    const jump = simulateDropLanding(plain);
    // By hand: v = √(2 g h).
    expect(Math.abs(jump.truth.touchdownVelocity + Math.sqrt(2 * gravity * 0.28))).toBeLessThan(1e-12);
    expect(jump.velocityAt(jump.truth.events.standingAgain + 0.1)).toBe(0);
    expect(jump.positionAt(jump.truth.events.standingAgain + 0.1)).toBe(0);
    expect(jump.forceAt(jump.truth.events.standingAgain + 0.1)).toBeCloseTo(70 * gravity, 9);
  });

  it("agrees with a fine integration of the force", () => {
    // Trapezoid error: step²/12 times the jumps of slope, under 1e-7 m/s with edges of 100 kN/s.
    const tolerance = 1e-6;
    for (const options of drawn.slice(0, 6)) {
      const jump = simulateDropLanding(options);
      const { touchdown, landingEnd, standingAgain } = jump.truth.events;
      const [landed, standing] = integrateFinely(jump, touchdown, [landingEnd, standingAgain]);
      expect(Math.abs(landed?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
      expect(Math.abs((landed?.position ?? Number.NaN) - jump.truth.positionLowestMetres)).toBeLessThan(tolerance);
      expect(Math.abs((standing?.position ?? Number.NaN) - jump.positionAt(standingAgain))).toBeLessThan(tolerance);
    }
  });

  it("has one contact, never pulls on a plate, and impulses that fit together", () => {
    for (const options of drawn) {
      const jump = simulateDropLanding({ ...options, plateNoiseNewtons: 0 });
      const { truth } = jump;
      for (const plate of jump.plates) expect(plate.force.every((force) => force > -1e-9)).toBe(true);
      expect(Math.abs(truth.landing.netImpulse + truth.massKg * truth.touchdownVelocity)).toBeLessThan(1e-9);
      const { both, left, right } = truth.landing.grossImpulse;
      expect(Math.abs(left + right - both)).toBeLessThan(1e-8);
    }
  });

  it("lands the leading leg first", () => {
    const { limbTouchdowns } = simulateDropLanding({
      ...plain,
      leadingLeg: "right",
      leadingFirstSeconds: 0.003,
    }).truth;
    expect((limbTouchdowns.left ?? 0) - (limbTouchdowns.right ?? 0)).toBeCloseTo(0.003, 12);
  });
});
