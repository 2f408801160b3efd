import { describe, expect, it } from "vitest";
import { drawHops } from "../../../core/simulate/draw-battery.ts";
import type { HopsOptions } from "../../../core/simulate/hops-options.ts";
import { simulateHops } from "../../../core/simulate/repeated-hops.ts";
import { integrateFinely } from "./integrate-finely.ts";

const gravity = 9.80665;
const plain: HopsOptions = {
  seed: 2,
  rateHz: 1000,
  massKg: 70,
  limb: "both",
  plates: "two",
  entryHeightMetres: 0.22,
  hops: [0.2, 0.21, 0.19, 0.22, 0.2].map((contactSeconds, index) => ({
    contactSeconds,
    jumpHeightMetres: 0.2 + 0.01 * index,
  })),
};
const drawn = Array.from({ length: 12 }, (_, index) =>
  drawHops(2 * index, {
    limb: (["both", "left", "right", "both"] as const)[index % 4] ?? "both",
    plates: index % 2 === 0 ? "two" : "one",
    kind: index % 3 === 0 ? "clean" : "noisy",
  }),
);

describe("simulated repeated hops", () => {
  it("have the wanted contacts and heights, and one last contact without a flight", () => {
    const { truth } = simulateHops(plain);
    expect(truth.contacts.map((each) => each.contactIndex)).toEqual([1, 2, 3, 4, 5, 6]);
    for (const [index, wish] of plain.hops.entries()) {
      const hop = truth.contacts[index]?.hop;
      expect(Math.abs((hop?.contactSeconds ?? 0) - wish.contactSeconds)).toBeLessThan(1e-12);
      expect(Math.abs((hop?.jumpHeightMetres ?? 0) - wish.jumpHeightMetres)).toBeLessThan(1e-12);
    }
    expect(truth.contacts.at(-1)?.hop).toBeUndefined();
  });

  it("agree with a fine integration of the force from standing to standing", () => {
    // Trapezoid error: step²/12 times the jumps of slope; it adds up over a dozen contacts.
    const tolerance = 1e-5;
    for (const options of drawn.slice(0, 3)) {
      const jump = simulateHops({ ...options, rateHz: 500 });
      const { firstMovement, standingAgain } = jump.truth.events;
      const [standing] = integrateFinely(jump, firstMovement, [standingAgain]);
      expect(Math.abs((standing?.velocity ?? Number.NaN) - jump.velocityAt(standingAgain))).toBeLessThan(tolerance);
      expect(Math.abs((standing?.position ?? Number.NaN) - jump.positionAt(standingAgain))).toBeLessThan(tolerance);
    }
  });

  it("have contacts between zero forces, each with impulses that fit together", () => {
    for (const options of drawn) {
      const { truth, forceAt } = simulateHops({ ...options, rateHz: 200 });
      let velocity = Math.sqrt(2 * gravity * truth.entryHeightMetres);
      for (const { touchdown, touchdownVelocity, hop } of truth.contacts) {
        expect(forceAt(touchdown - 1e-7)).toBe(0);
        expect(forceAt(touchdown + 1e-6)).toBeGreaterThan(0);
        expect(touchdownVelocity).toBeLessThanOrEqual(-velocity + 1e-12);
        if (hop === undefined) continue;
        expect(forceAt(hop.takeoff + 1e-7)).toBe(0);
        expect(Math.abs(hop.braking.netImpulse + truth.massKg * touchdownVelocity)).toBeLessThan(1e-8);
        expect(Math.abs(hop.propulsion.netImpulse - truth.massKg * hop.takeoffVelocity)).toBeLessThan(1e-8);
        // Flight time height by hand: g·t²/8.
        expect(hop.jumpHeightFlightTimeMetres).toBeCloseTo((gravity * hop.flightSeconds ** 2) / 8, 12);
        expect(hop.reactiveStrengthIndex).toBeCloseTo(hop.jumpHeightFlightTimeMetres / hop.contactSeconds, 12);
        velocity = hop.takeoffVelocity;
      }
    }
  });

  it("have the stiffness of the sine model exactly where all hops are equal half sines", () => {
    const { truth } = simulateHops({
      ...plain,
      entryHeightMetres: 0.2,
      touchdownLowerMetres: 0,
      hops: Array.from({ length: 6 }, () => ({
        contactSeconds: 0.2,
        jumpHeightMetres: 0.2,
        contactShape: "half-sine" as const,
      })),
    });
    for (const { hop } of truth.contacts.slice(0, -1)) {
      if (hop === undefined) throw new Error("a flight follows");
      const { contactSeconds: contact, flightSeconds: flight } = hop;
      // Dalleau et al. 2004: m·π·(tf + tc) / (tc²·((tf + tc)/π − tc/4)).
      const model = (70 * Math.PI * (flight + contact)) / (contact ** 2 * ((flight + contact) / Math.PI - contact / 4));
      expect(Math.abs((hop.springStiffnessNewtonsPerMetre ?? Number.NaN) / model - 1)).toBeLessThan(1e-9);
    }
  });

  it("carry the wanted limb shares in every contact, landing and leaving apart", () => {
    const { truth } = simulateHops({
      ...plain,
      rightShares: { standing: 0.5, braking: 0.46, propulsion: 0.48, landing: 0.47 },
      limbTouchdownDifferenceSeconds: 0.002,
      limbTakeoffDifferenceSeconds: -0.003,
    });
    for (const { hop, limbTouchdowns } of truth.contacts) {
      expect((limbTouchdowns.right ?? 0) - (limbTouchdowns.left ?? 0)).toBeCloseTo(0.002, 12);
      if (hop === undefined) continue;
      expect((hop.limbTakeoffs.right ?? 0) - (hop.limbTakeoffs.left ?? 0)).toBeCloseTo(-0.003, 12);
      expect(hop.braking.grossImpulse.right / hop.braking.grossImpulse.both).toBeCloseTo(0.46, 8);
      expect(hop.propulsion.grossImpulse.right / hop.propulsion.grossImpulse.both).toBeCloseTo(0.48, 8);
    }
  });
});
