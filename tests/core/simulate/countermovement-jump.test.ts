import { describe, expect, it } from "vitest";
import type { SimulatedJump } from "../../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import type { JumpOptions } from "../../../core/simulate/options.ts";
import { integrate } from "../../../core/simulate/quadrature.ts";
import { landingShapeNames, pushShapeNames } from "../../../core/simulate/shapes.ts";
import { indexPercent } from "../../../core/simulate/truth.ts";

const gravity = 9.80665;
const plain: JumpOptions = {
  seed: 2,
  rateHz: 1000,
  massKg: 69.4,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.315,
  timeToTakeoffSeconds: 0.78,
  depthMetres: 0.29,
};

const drawn: readonly JumpOptions[] = [
  ...Array.from({ length: 24 }, (_, index) =>
    drawJump(2 * index, { limb: "both", plates: "two", kind: index % 2 === 0 ? "clean" : "noisy" }),
  ),
  ...Array.from({ length: 12 }, (_, index) =>
    drawJump(2 * index, { limb: index % 2 === 0 ? "left" : "right", plates: "one", kind: "noisy" }),
  ),
];

/** Trapezoids at 200 kHz over the continuous force: an integration that shares nothing with the closed forms. */
function integrateFinely(jump: SimulatedJump, stops: readonly number[]): { velocity: number; position: number }[] {
  const { massKg, gravity: g } = jump.truth;
  let time = 0;
  let velocity = jump.velocityAt(0);
  let position = jump.positionAt(0);
  let acceleration = jump.forceAt(0) / massKg - g;
  return stops.map((stop) => {
    const steps = Math.ceil((stop - time) * 200_000);
    const step = (stop - time) / steps;
    for (let index = 0; index < steps; index++) {
      const next = jump.forceAt(time + step * (index + 1)) / massKg - g;
      position += velocity * step + (step * step * (2 * acceleration + next)) / 6;
      velocity += (step * (acceleration + next)) / 2;
      acceleration = next;
    }
    time = stop;
    return { velocity, position };
  });
}

describe("the truth of a simulated jump", () => {
  it("meets the wanted height, time to take-off and depth exactly", () => {
    const { truth } = simulateCountermovementJump(plain);
    expect(Math.abs(truth.jumpHeightMetres - 0.315)).toBeLessThan(1e-12);
    expect(Math.abs(truth.timeToTakeoffSeconds - 0.78)).toBeLessThan(1e-12);
    expect(Math.abs(truth.depthMetres - 0.29)).toBeLessThan(1e-10);
    // By hand: v = √(2 g h) with g = 9.80665.
    expect(Math.abs(truth.takeoffVelocity - Math.sqrt(2 * gravity * 0.315))).toBeLessThan(1e-12);
  });

  it("flies by the ballistic law: the time follows from both velocities and the fall from both positions", () => {
    for (const options of drawn) {
      const { truth } = simulateCountermovementJump(options);
      const { takeoffVelocity: up, touchdownVelocity: down, flightSeconds } = truth;
      const fall = truth.positionAtTakeoffMetres - truth.positionAtTouchdownMetres;
      expect(Math.abs(flightSeconds - (up - down) / gravity)).toBeLessThan(1e-12);
      expect(Math.abs(up * flightSeconds - (gravity * flightSeconds ** 2) / 2 + fall)).toBeLessThan(1e-12);
    }
  });

  it("agrees with a fine integration of the force in velocity and position at every event", () => {
    // Trapezoid error: step²/12 times the jumps of slope, under 2e-8 m/s; measured below 1e-8.
    const tolerance = 1e-7;
    for (const options of [drawn[0], drawn[1], drawn[25]]) {
      if (options === undefined) throw new Error("three jumps are drawn");
      const jump = simulateCountermovementJump(options);
      const { events, takeoffVelocity, touchdownVelocity, depthMetres } = jump.truth;
      const stops = [events.lowestPosition, events.takeoff, events.touchdown, events.landingEnd, events.standingAgain];
      const [lowest, takeoff, touchdown, landed, standing] = integrateFinely(jump, stops);
      expect(Math.abs(lowest?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
      expect(Math.abs((lowest?.position ?? Number.NaN) + depthMetres)).toBeLessThan(tolerance);
      expect(Math.abs((takeoff?.velocity ?? Number.NaN) - takeoffVelocity)).toBeLessThan(tolerance);
      expect(Math.abs((touchdown?.velocity ?? Number.NaN) - touchdownVelocity)).toBeLessThan(tolerance);
      expect(Math.abs(landed?.velocity ?? Number.NaN)).toBeLessThan(tolerance);
      expect(Math.abs((standing?.velocity ?? Number.NaN) - jump.velocityAt(events.standingAgain))).toBeLessThan(
        tolerance,
      );
      expect(Math.abs((standing?.position ?? Number.NaN) - jump.positionAt(events.standingAgain))).toBeLessThan(
        tolerance,
      );
    }
  });

  it("returns velocity and position to zero when the intended motion is over", () => {
    for (const name of landingShapeNames) {
      const jump = simulateCountermovementJump({ ...plain, landingShape: name });
      const justBefore = jump.truth.events.standingAgain - 1e-9;
      expect(Math.abs(jump.velocityAt(justBefore))).toBeLessThan(1e-9);
      expect(Math.abs(jump.positionAt(justBefore))).toBeLessThan(1e-9);
    }
  });

  it("keeps its events what they are called: zero net force, zero velocity, zero force", () => {
    for (const options of drawn) {
      const jump = simulateCountermovementJump(options);
      const { events, bodyWeightNewtons } = jump.truth;
      expect(Math.abs(jump.forceAt(events.endOfUnweighting) / bodyWeightNewtons - 1)).toBeLessThan(1e-9);
      expect(Math.abs(jump.velocityAt(events.lowestPosition))).toBeLessThan(1e-11);
      expect(Math.abs(jump.velocityAt(events.landingEnd))).toBeLessThan(1e-11);
      expect(jump.forceAt(events.takeoff - 1e-7)).toBeGreaterThan(0);
      expect(jump.forceAt(events.takeoff + 1e-7)).toBe(0);
      expect(jump.forceAt(events.touchdown - 1e-7)).toBe(0);
      expect(jump.forceAt(events.touchdown + 1e-7)).toBeGreaterThan(0);
      expect(events.firstMovement).toBeLessThan(events.endOfUnweighting);
      expect(events.endOfUnweighting).toBeLessThan(events.lowestPosition);
      expect(events.lowestPosition).toBeLessThan(events.takeoff);
    }
  });

  it("has net impulses equal to mass times the change of velocity, and gross ones that are the sum of both limbs", () => {
    for (const options of drawn) {
      const jump = simulateCountermovementJump(options);
      const { truth } = jump;
      const { unweighting, braking, propulsion } = truth.phases;
      const net = braking.netImpulse + propulsion.netImpulse + unweighting.netImpulse;
      const start = truth.massKg * jump.velocityAt(truth.events.firstMovement);
      expect(Math.abs(net - (truth.massKg * truth.takeoffVelocity - start))).toBeLessThan(1e-9);
      for (const phase of Object.values(truth.phases)) {
        const { both, left, right } = phase.grossImpulse;
        expect(Math.abs(left + right - both)).toBeLessThan(1e-9);
        expect(Math.abs(both - phase.netImpulse - truth.bodyWeightNewtons * phase.seconds)).toBeLessThan(1e-9);
      }
      const direct = integrate(
        jump.forceAt,
        truth.events.lowestPosition,
        truth.events.takeoff,
        Array.from({ length: 4000 }, (_, index) => truth.events.lowestPosition + index * 1e-4),
      );
      // Breaks inside short stretches leave a quadrature error far below a micronewton second.
      expect(Math.abs(direct - propulsion.grossImpulse.both)).toBeLessThan(1e-6);
    }
  });

  it("does not depend on the sampling rate", () => {
    const coarse = simulateCountermovementJump({ ...plain, rateHz: 500 }).truth;
    const fine = simulateCountermovementJump({ ...plain, rateHz: 2000 }).truth;
    // Only the random phase between samples and events moves, so durations agree to rounding of times near 3 s.
    expect(Math.abs(coarse.flightSeconds - fine.flightSeconds)).toBeLessThan(1e-12);
    expect(Math.abs(coarse.phases.braking.seconds - fine.phases.braking.seconds)).toBeLessThan(1e-12);
    expect(Math.abs(coarse.phases.propulsion.netImpulse - fine.phases.propulsion.netImpulse)).toBeLessThan(1e-9);
  });
});

describe("the force of a simulated jump", () => {
  it("is never negative, and zero in flight on every plate", () => {
    for (const options of drawn) {
      const jump = simulateCountermovementJump({ ...options, plateNoiseNewtons: 0 });
      const { takeoff, touchdown } = jump.truth.events;
      for (const plate of jump.plates) {
        for (let index = 0; index < jump.sampleCount; index++) {
          const force = plate.force[index] ?? Number.NaN;
          const time = index / jump.rateHz;
          if (!(force >= 0)) throw new Error(`${force} N at ${time} s`);
          if (time > takeoff && time < touchdown && force !== 0) throw new Error(`${force} N in flight`);
        }
      }
    }
  });

  it("leaves the plate at 5 to 30 kN/s and meets it at 10 to 100 kN/s", () => {
    for (const options of drawn) {
      const jump = simulateCountermovementJump(options);
      const { takeoff, touchdown } = jump.truth.events;
      const leaving = jump.forceAt(takeoff - 0.0005) / 0.0005;
      const meeting = jump.forceAt(touchdown + 0.0001) / 0.0001;
      expect(leaving).toBeGreaterThanOrEqual(5000 * (1 - 1e-9));
      expect(leaving).toBeLessThanOrEqual(30000 * (1 + 1e-9));
      // The slope of the meeting falls a little within the first 0.1 ms (under 1 %).
      expect(meeting).toBeGreaterThanOrEqual(10000 * 0.99);
      expect(meeting).toBeLessThanOrEqual(100000);
    }
  });

  it("is sampled, not averaged: without plate errors a sample is the continuous force at its instant", () => {
    const jump = simulateCountermovementJump({ ...plain, swayMetres: 0.001 });
    for (const index of [0, 1234, 2500, 2900, 3600, jump.sampleCount - 1]) {
      const sum = jump.plates.reduce((total, plate) => total + (plate.force[index] ?? Number.NaN), 0);
      expect(Math.abs(sum - jump.forceAt(index / 1000))).toBeLessThan(1e-9);
    }
  });

  it("puts events at random phase between samples", () => {
    const phases = Array.from({ length: 200 }, (_, seed) => {
      const sample = simulateCountermovementJump({ ...plain, seed, quietSecondsAfter: 0 }).truth.events.takeoff * 1000;
      return sample - Math.floor(sample);
    });
    // Uniform phases: 50 of 200 expected in each quarter, SD 6.1, so 25 to 75 is four SD.
    for (const quarter of [0, 0.25, 0.5, 0.75]) {
      const count = phases.filter((phase) => phase >= quarter && phase < quarter + 0.25).length;
      expect(count).toBeGreaterThan(25);
      expect(count).toBeLessThan(75);
    }
  });

  it("repeats itself to the byte for the same options and differs for another seed", () => {
    const options = { ...plain, plateNoiseNewtons: 1.5, swayMetres: 0.001, quantisationNewtons: 0.1 };
    const first = simulateCountermovementJump(options);
    const again = simulateCountermovementJump(options);
    const other = simulateCountermovementJump({ ...options, seed: 4 });
    expect(again.plates).toEqual(first.plates);
    expect(again.truth).toEqual(first.truth);
    expect(other.plates[0]?.force.slice(0, 100)).not.toEqual(first.plates[0]?.force.slice(0, 100));
  });

  it("stands still before and after for the seconds asked for", () => {
    const jump = simulateCountermovementJump(plain);
    const { firstMovement, standingAgain } = jump.truth.events;
    expect(firstMovement).toBeGreaterThanOrEqual(2);
    expect(jump.sampleCount / 1000 - standingAgain).toBeGreaterThanOrEqual(2.5);
    expect(jump.forceAt(firstMovement - 0.1)).toBeCloseTo(69.4 * gravity, 9);
    expect(jump.forceAt(standingAgain + 0.1)).toBeCloseTo(69.4 * gravity, 9);
  });
});

describe("the limbs of a simulated jump", () => {
  const shares = { standing: 0.49, braking: 66 / 166, propulsion: 80 / 180, landing: 62 / 162 };

  it.each([
    [0, 0],
    [-0.006, 0.003],
    [0.006, -0.003],
  ])(
    "carry the wanted indices in braking, propulsion and landing peak when leaving %s s and landing %s s apart",
    (leaving, landing) => {
      const { truth } = simulateCountermovementJump({
        ...plain,
        swayMetres: 0.001,
        rightShares: shares,
        limbTakeoffDifferenceSeconds: leaving,
        limbTouchdownDifferenceSeconds: landing,
      });
      expect(Math.abs(indexPercent(truth.phases.braking.grossImpulse, "right") - 66)).toBeLessThan(1e-9);
      expect(Math.abs(indexPercent(truth.phases.propulsion.grossImpulse, "right") - 80)).toBeLessThan(1e-9);
      expect(Math.abs(indexPercent(truth.phases.landing.peakForce, "right") - 62)).toBeLessThan(1e-6);
      expect(Math.abs(indexPercent(truth.phases.landing.peakForce, "left") - 10000 / 62)).toBeLessThan(1e-4);
    },
  );

  it("leave and land at their own instants", () => {
    const jump = simulateCountermovementJump({
      ...plain,
      rateHz: 20000,
      rightShares: shares,
      limbTakeoffDifferenceSeconds: -0.006,
      limbTouchdownDifferenceSeconds: 0.003,
    });
    const { left, right } = jump.truth.limbEvents;
    if (left === undefined || right === undefined) throw new Error("both limbs work");
    expect(right.takeoff - left.takeoff).toBeCloseTo(-0.006, 12);
    expect(right.touchdown - left.touchdown).toBeCloseTo(0.003, 12);
    for (const plate of jump.plates) {
      const times = plate.limb === "left" ? left : right;
      const lastLoaded = plate.force.findLastIndex((force, index) => force > 0 && index / 20000 < times.takeoff + 0.1);
      const firstLoaded = plate.force.findIndex((force, index) => force > 0 && index / 20000 > times.takeoff + 0.1);
      expect(Math.abs(lastLoaded / 20000 - times.takeoff)).toBeLessThan(1 / 20000);
      expect(Math.abs(firstLoaded / 20000 - times.touchdown)).toBeLessThan(1 / 20000);
    }
  });

  it("are one in a single-leg jump: the other plate stays empty", () => {
    const single = { ...plain, limb: "right", jumpHeightMetres: 0.14, timeToTakeoffSeconds: 0.9 } as const;
    const { depthMetres: _, ...withoutDepth } = single;
    const jump = simulateCountermovementJump(withoutDepth);
    expect(jump.plates[0]?.force.every((force) => force === 0)).toBe(true);
    expect(jump.truth.limbEvents.left).toBeUndefined();
    const onePlate = simulateCountermovementJump({ ...withoutDepth, plates: "one" });
    expect(onePlate.plates).toHaveLength(1);
    expect(onePlate.plates[0]?.limb).toBe("right");
    expect(onePlate.plates[0]?.force).toEqual(jump.plates[1]?.force);
  });

  it("cannot leave more than 12 ms or land more than 6 ms apart", () => {
    expect(() => simulateCountermovementJump({ ...plain, limbTakeoffDifferenceSeconds: 0.013 })).toThrow(RangeError);
    expect(() => simulateCountermovementJump({ ...plain, limbTouchdownDifferenceSeconds: 0.007 })).toThrow(RangeError);
  });
});

describe("shapes", () => {
  const { depthMetres: _, timeToTakeoffSeconds: __, ...free } = plain;
  const push = (name: (typeof pushShapeNames)[number]) => {
    const jump = simulateCountermovementJump({ ...free, pushShape: name });
    const { events, bodyWeightNewtons } = jump.truth;
    const at = (time: number): number => jump.forceAt(time) / bodyWeightNewtons;
    const from = events.firstMovement;
    const steps = Math.floor((events.takeoff - from) * 10000);
    const curve = Array.from({ length: steps }, (_, index) => at(from + index / 10000));
    const peaks = curve.flatMap((force, index) =>
      force > 1.02 && force > (curve[index - 1] ?? 9) && force >= (curve[index + 1] ?? 9) ? [{ force, index }] : [],
    );
    return { jump, events, curve, peaks, at };
  };

  it("are at least six of the push and four of the landing", () => {
    expect(pushShapeNames.length).toBeGreaterThanOrEqual(6);
    expect(landingShapeNames.length).toBeGreaterThanOrEqual(4);
  });

  it("slow-dip unweights at least a quarter longer and less deeply than even", () => {
    const slow = push("slow-dip");
    const even = push("even");
    const seconds = (each: typeof slow): number => each.jump.truth.phases.unweighting.seconds;
    expect(seconds(slow)).toBeGreaterThan(1.25 * seconds(even));
    expect(Math.min(...slow.curve.slice(0, 4000))).toBeGreaterThan(Math.min(...even.curve.slice(0, 4000)));
  });

  it("two-peaked has two peaks with a valley at least 0.3 body weights below the lower one", () => {
    const { peaks, curve } = push("two-peaked");
    expect(peaks).toHaveLength(2);
    const [first, second] = peaks;
    if (first === undefined || second === undefined) throw new Error("two peaks");
    const valley = Math.min(...curve.slice(first.index, second.index));
    expect(Math.min(first.force, second.force) - valley).toBeGreaterThan(0.3);
  });

  it("bottom-pause holds force within a quarter of body weight at the lowest position and moves under 2 cm in 0.1 s there", () => {
    const { jump, events, at } = push("bottom-pause");
    expect(at(events.lowestPosition)).toBeGreaterThan(1);
    expect(at(events.lowestPosition)).toBeLessThan(1.25);
    const lowest = jump.positionAt(events.lowestPosition);
    expect(jump.positionAt(events.lowestPosition - 0.05) - lowest).toBeLessThan(0.02);
    expect(jump.positionAt(events.lowestPosition + 0.05) - lowest).toBeLessThan(0.02);
  });

  it("early-rise has its largest force before, late-rise well after the lowest position", () => {
    const peakTime = (each: ReturnType<typeof push>): number =>
      each.events.firstMovement + each.curve.indexOf(Math.max(...each.curve)) / 10000;
    const early = push("early-rise");
    const late = push("late-rise");
    expect(peakTime(early)).toBeLessThan(early.events.lowestPosition);
    expect(peakTime(late)).toBeGreaterThan(late.events.lowestPosition + 0.1);
  });

  it("soft lands lower, later and deeper than ordinary, stiff higher, earlier and shallower", () => {
    const land = (name: (typeof landingShapeNames)[number]) => {
      const { truth, positionAt } = simulateCountermovementJump({ ...plain, landingShape: name });
      return {
        peak: truth.phases.landing.peakForce.both,
        seconds: truth.phases.landing.seconds,
        depth: -positionAt(truth.events.landingEnd),
      };
    };
    const [soft, ordinary, stiff] = [land("soft"), land("ordinary"), land("stiff")];
    expect(soft.peak).toBeLessThan(ordinary.peak);
    expect(ordinary.peak).toBeLessThan(stiff.peak);
    expect(soft.seconds).toBeGreaterThan(ordinary.seconds);
    expect(ordinary.seconds).toBeGreaterThan(stiff.seconds);
    expect(soft.depth).toBeGreaterThan(ordinary.depth);
    expect(ordinary.depth).toBeGreaterThan(stiff.depth);
  });

  it("a two-peaked landing has a first, smaller maximum before the main one", () => {
    const { forceAt, truth } = simulateCountermovementJump({ ...plain, landingShape: "two-peaked" });
    const { touchdown, landingEnd } = truth.events;
    const curve = Array.from({ length: 2000 }, (_, index) =>
      forceAt(touchdown + ((landingEnd - touchdown) * index) / 2000),
    );
    const peaks = curve.filter(
      (force, index) => force > (curve[index - 1] ?? force) && force >= (curve[index + 1] ?? force),
    );
    expect(peaks).toHaveLength(2);
    expect(peaks[0]).toBeLessThan(0.6 * (peaks[1] ?? 0));
  });

  it("every push is smooth: force changes by less than 0.5 % of body weight in 0.1 ms until take-off", () => {
    for (const name of pushShapeNames) {
      const { curve } = push(name);
      for (const [index, force] of curve.entries()) {
        expect(Math.abs(force - (curve[index - 1] ?? force))).toBeLessThan(0.005);
      }
    }
  });
});
