import { describe, expect, it } from "vitest";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import type { DropJumpOptions } from "../../../core/simulate/drop-options.ts";
import { heightForFlightTimeHeight } from "../../../core/simulate/drop-options.ts";
import { contactShapeNames } from "../../../core/simulate/shapes.ts";
import { integrateFinely } from "./integrate-finely.ts";

const gravity = 9.80665;
const plain: DropJumpOptions = {
  seed: 2,
  rateHz: 1000,
  massKg: 69.4,
  limb: "both",
  plates: "two",
  boxHeightMetres: 0.3,
  dropHeightEffectiveMetres: 0.27,
  jumpHeightMetres: 0.26,
  contactSeconds: 0.21,
};

const drawn: readonly DropJumpOptions[] = [
  ...Array.from({ length: 20 }, (_, index) =>
    drawDropJump(2 * index, { limb: "both", plates: "two", kind: index % 2 === 0 ? "clean" : "noisy" }),
  ),
  ...Array.from({ length: 10 }, (_, index) =>
    drawDropJump(2 * index, { limb: index % 2 === 0 ? "left" : "right", plates: "two", kind: "noisy" }),
  ),
  ...Array.from({ length: 6 }, (_, index) =>
    drawDropJump(2 * index, { limb: "both", plates: "one", kind: "clean", edges: "straight" }),
  ),
];

describe("the truth of a simulated drop jump", () => {
  it("meets the wanted heights and contact time exactly", () => {
    const { truth } = simulateDropJump(plain);
    expect(Math.abs(truth.dropHeightEffectiveMetres - 0.27)).toBeLessThan(1e-12);
    expect(Math.abs(truth.jumpHeightMetres - 0.26)).toBeLessThan(1e-12);
    expect(Math.abs(truth.contactSeconds - 0.21)).toBeLessThan(1e-12);
    // By hand: v = √(2 g h).
    expect(Math.abs(truth.touchdownVelocity + Math.sqrt(2 * gravity * 0.27))).toBeLessThan(1e-12);
    expect(Math.abs(truth.takeoffVelocity - Math.sqrt(2 * gravity * 0.26))).toBeLessThan(1e-12);
  });

  it("has the flight-time height that was wanted through heightForFlightTimeHeight", () => {
    const lower = 0.012;
    const { truth } = simulateDropJump({
      ...plain,
      touchdownLowerMetres: lower,
      jumpHeightMetres: heightForFlightTimeHeight(0.27, lower),
    });
    expect(Math.abs(truth.jumpHeightFlightTimeMetres - 0.27)).toBeLessThan(1e-12);
    expect(Math.abs(truth.reactiveStrengthIndex - 0.27 / 0.21)).toBeLessThan(1e-10);
  });

  it("flies by the ballistic law", () => {
    for (const options of drawn) {
      const { truth } = simulateDropJump(options);
      const fall = truth.positionAtTakeoffMetres - truth.positionAtLandingMetres;
      const { takeoffVelocity, flightSeconds } = truth;
      expect(Math.abs(takeoffVelocity * flightSeconds - (gravity * flightSeconds ** 2) / 2 + fall)).toBeLessThan(1e-12);
    }
  });

  it.each(contactShapeNames)("agrees with a fine integration of the force for the contact shape %s", (contactShape) => {
    // Trapezoid error: step²/12 times the jumps of slope, under 1e-7 m/s with edges of 60 kN/s.
    const tolerance = 1e-6;
    const jump = simulateDropJump({ ...plain, contactShape, contactSeconds: 0.26, swayMetres: 0.001 });
    const { events } = jump.truth;
    const stops = [events.lowestPosition, events.takeoff, events.landing, events.landingEnd, events.standingAgain];
    const [lowest, takeoff, landing, landed, standing] = integrateFinely(jump, events.touchdown, stops);
    expect(Math.abs(lowest?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
    expect(Math.abs((lowest?.position ?? Number.NaN) - jump.truth.positionLowestMetres)).toBeLessThan(tolerance);
    expect(Math.abs((takeoff?.velocity ?? Number.NaN) - jump.truth.takeoffVelocity)).toBeLessThan(tolerance);
    expect(Math.abs((landing?.velocity ?? Number.NaN) - jump.truth.landingVelocity)).toBeLessThan(tolerance);
    expect(Math.abs(landed?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
    expect(Math.abs((standing?.velocity ?? Number.NaN) - jump.velocityAt(events.standingAgain))).toBeLessThan(
      tolerance,
    );
    expect(Math.abs((standing?.position ?? Number.NaN) - jump.positionAt(events.standingAgain))).toBeLessThan(
      tolerance,
    );
  });

  it("keeps its events what they are called", () => {
    for (const options of drawn) {
      const { truth, forceAt, velocityAt } = simulateDropJump(options);
      const { events } = truth;
      for (const making of [events.touchdown, events.landing]) {
        expect(forceAt(making - 1e-7)).toBe(0);
        expect(forceAt(making + 1e-6)).toBeGreaterThan(0);
      }
      expect(forceAt(events.takeoff - 1e-6)).toBeGreaterThan(0);
      expect(forceAt(events.takeoff + 1e-7)).toBe(0);
      expect(Math.abs(velocityAt(events.lowestPosition))).toBeLessThan(1e-11);
      expect(Math.abs(velocityAt(events.landingEnd))).toBeLessThan(1e-11);
    }
  });

  it("has impulses that fit together: net is mass times the change of velocity, gross the sum of both limbs", () => {
    for (const options of drawn) {
      const { truth } = simulateDropJump(options);
      const { braking, propulsion } = truth.phases;
      expect(Math.abs(braking.netImpulse + truth.massKg * truth.touchdownVelocity)).toBeLessThan(1e-9);
      expect(Math.abs(propulsion.netImpulse - truth.massKg * truth.takeoffVelocity)).toBeLessThan(1e-9);
      for (const phase of Object.values(truth.phases)) {
        const { both, left, right } = phase.grossImpulse;
        expect(Math.abs(left + right - both)).toBeLessThan(1e-8);
        expect(Math.abs(phase.limbNetImpulse.left + phase.limbNetImpulse.right - phase.netImpulse)).toBeLessThan(1e-8);
      }
    }
  });

  it("knows the stiffness of the half sine, which the sine model finds from contact and flight time", () => {
    // Symmetric: the drop equals the rise and both ends of the contact are equally high.
    const { truth } = simulateDropJump({
      ...plain,
      contactShape: "half-sine",
      dropHeightEffectiveMetres: 0.26,
      touchdownLowerMetres: 0,
    });
    const { contactSeconds: contact, flightSeconds: flight, massKg } = truth;
    // Dalleau et al. 2004: m·π·(tf + tc) / (tc²·((tf + tc)/π − tc/4)).
    const model =
      (massKg * Math.PI * (flight + contact)) / (contact ** 2 * ((flight + contact) / Math.PI - contact / 4));
    expect(Math.abs((truth.springStiffnessNewtonsPerMetre ?? Number.NaN) / model - 1)).toBeLessThan(1e-10);
    expect(simulateDropJump(plain).truth.springStiffnessNewtonsPerMetre).toBeUndefined();
  });
});

describe("the limbs of a simulated drop jump", () => {
  it("the leading leg lands first by the wanted time and carries the wanted part more in braking", () => {
    const shares = { standing: 0.5, braking: 0.46, propulsion: 0.48, landing: 0.47 };
    for (const leadingLeg of ["left", "right"] as const) {
      const { truth } = simulateDropJump({
        ...plain,
        rightShares: shares,
        leadingLeg,
        leadingFirstSeconds: 0.005,
        leadingBrakingGain: 0.04,
        limbTakeoffDifferenceSeconds: 0.003,
      });
      const { left, right } = truth.limbEvents;
      const sign = leadingLeg === "left" ? 1 : -1;
      expect((right?.touchdown ?? 0) - (left?.touchdown ?? 0)).toBeCloseTo(sign * 0.005, 12);
      expect((right?.takeoff ?? 0) - (left?.takeoff ?? 0)).toBeCloseTo(0.003, 12);
      const { braking, propulsion } = truth.phases;
      const share = (values: { both: number; right: number }): number => values.right / values.both;
      expect(share(braking.grossImpulse)).toBeCloseTo(0.46 - sign * 0.04, 9);
      expect(share(propulsion.grossImpulse)).toBeCloseTo(0.48, 9);
    }
  });

  it("meet and leave their plates at their own instants", () => {
    const rateHz = 20000;
    const jump = simulateDropJump({
      ...plain,
      rateHz,
      leadingLeg: "left",
      limbTakeoffDifferenceSeconds: -0.005,
      limbLandingDifferenceSeconds: 0.002,
    });
    for (const plate of jump.plates) {
      const times = plate.limb === "left" ? jump.truth.limbEvents.left : jump.truth.limbEvents.right;
      if (times === undefined) throw new Error("both limbs work");
      const middle = (times.takeoff + times.landing) / 2;
      const first = plate.force.findIndex((force) => force > 0) / rateHz;
      const last = plate.force.findLastIndex((force, index) => force > 0 && index / rateHz < middle) / rateHz;
      const again = plate.force.findIndex((force, index) => force > 0 && index / rateHz > middle) / rateHz;
      expect(Math.abs(first - times.touchdown)).toBeLessThan(1 / rateHz);
      expect(Math.abs(last - times.takeoff)).toBeLessThan(1 / rateHz);
      expect(Math.abs(again - times.landing)).toBeLessThan(1 / rateHz);
    }
  });

  it("never pull on a plate", () => {
    for (const options of drawn) {
      for (const plate of simulateDropJump({ ...options, plateNoiseNewtons: 0 }).plates) {
        expect(plate.force.every((force) => force > -1e-9)).toBe(true);
      }
    }
  });

  it("are one in a single-leg drop jump: the other plate stays empty unless its foot presses or comes down", () => {
    const single: DropJumpOptions = {
      ...plain,
      limb: "right",
      boxHeightMetres: 0.2,
      dropHeightEffectiveMetres: 0.17,
      jumpHeightMetres: 0.13,
      contactSeconds: 0.31,
    };
    const jump = simulateDropJump(single);
    expect(jump.plates[0]?.force.every((force) => force === 0)).toBe(true);
    expect(jump.truth.limbEvents.left).toBeUndefined();
    expect(simulateDropJump({ ...single, plates: "one" }).plates[0]?.force).toEqual(jump.plates[1]?.force);
    const pressing = simulateDropJump({ ...single, rateHz: 4000, otherFootNewtons: 45 });
    expect(Math.max(...(pressing.plates[0]?.force ?? []))).toBeCloseTo(45, 2);
    const standing = simulateDropJump({ ...single, standsOnBothAfterLanding: true });
    expect(standing.plates[0]?.force.at(-1)).toBeCloseTo((69.4 * gravity) / 2, 9);
  });

  it("cannot land more than 20 ms or leave more than 12 ms apart", () => {
    expect(() => simulateDropJump({ ...plain, leadingLeg: "left", leadingFirstSeconds: 0.021 })).toThrow(RangeError);
    expect(() => simulateDropJump({ ...plain, limbTakeoffDifferenceSeconds: 0.013 })).toThrow(RangeError);
  });
});

describe("the recording of a simulated drop jump", () => {
  it("begins on an empty plate and ends in quiet standing", () => {
    const jump = simulateDropJump({ ...plain, emptySecondsBefore: 1, quietSecondsAfter: 2.5 });
    expect(jump.truth.events.touchdown).toBeGreaterThanOrEqual(1);
    expect(jump.truth.events.touchdown).toBeLessThan(1.001);
    expect(jump.sampleCount / 1000 - jump.truth.events.standingAgain).toBeGreaterThan(2.499);
    expect(jump.forceAt(jump.truth.events.standingAgain + 0.1)).toBeCloseTo(69.4 * gravity, 9);
  });

  it("ends on an empty plate after stepping off", () => {
    const jump = simulateDropJump({ ...plain, emptySecondsAfter: 1 });
    for (const plate of jump.plates) {
      expect(plate.force.slice(-900).every((force) => force === 0)).toBe(true);
      expect(plate.force.at(-1700)).toBeGreaterThan(300);
    }
  });

  it("leaves the plate once more where a bounce is asked for", () => {
    const jump = simulateDropJump({ ...plain, bounceFlightSeconds: 0.08 });
    const total = Array.from({ length: jump.sampleCount }, (_, index) =>
      jump.plates.reduce((sum, plate) => sum + (plate.force[index] ?? 0), 0),
    );
    const flights = total.filter((force, index) => index > 0 && force === 0 && (total[index - 1] ?? 0) > 0).length;
    expect(flights).toBe(2);
  });

  it("has straight edges of the wanted steepness where they are asked for", () => {
    const { forceAt, truth } = simulateDropJump({
      ...plain,
      touchdownRateNewtonsPerSecond: 20000,
      landingRateNewtonsPerSecond: 15000,
      takeoffRateNewtonsPerSecond: 18000,
      straightTo: 0.5,
    });
    const { touchdown, takeoff, landing } = truth.events;
    for (const seconds of [0.001, 0.01]) {
      expect(Math.abs(forceAt(touchdown + seconds) - 20000 * seconds)).toBeLessThan(1e-6);
      expect(Math.abs(forceAt(landing + seconds) - 15000 * seconds)).toBeLessThan(1e-6);
      expect(Math.abs(forceAt(takeoff - seconds) - 18000 * seconds)).toBeLessThan(1e-6);
    }
  });

  it("repeats itself to the byte for the same options and differs for another seed", () => {
    const options = { ...plain, plateNoiseNewtons: 1.5, swayMetres: 0.001 };
    expect(simulateDropJump(options).plates).toEqual(simulateDropJump(options).plates);
    expect(simulateDropJump({ ...options, seed: 4 }).plates[0]?.force.slice(0, 50)).not.toEqual(
      simulateDropJump(options).plates[0]?.force.slice(0, 50),
    );
  });
});
