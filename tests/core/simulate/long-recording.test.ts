import { describe, expect, it } from "vitest";
import type { Act } from "../../../core/simulate/act.ts";
import { recordActs } from "../../../core/simulate/act.ts";
import { countermovementAct } from "../../../core/simulate/countermovement-act.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { dropJumpAct } from "../../../core/simulate/drop-jump.ts";
import type { DropJumpTruth } from "../../../core/simulate/drop-truth.ts";
import { standAct, stepOffAct, stepOnAct } from "../../../core/simulate/standing-acts.ts";
import type { JumpTruth } from "../../../core/simulate/truth.ts";
import { integrateFinely } from "./integrate-finely.ts";

const gravity = 9.80665;
const athlete = { massKg: 70, limb: "both" } as const;
const recording = { ...athlete, seed: 2, rateHz: 1000, plates: "two", swayMetres: 0.001 } as const;
const jump = { ...athlete, jumpHeightMetres: 0.3 };

describe("a long recording", () => {
  it("holds several trials of one body: step on, stand, jump, stand, jump, stand, step off, drop jump", () => {
    const acts: readonly Act<JumpTruth | DropJumpTruth | undefined>[] = [
      stepOnAct(1),
      standAct(2),
      countermovementAct(jump),
      standAct(2),
      countermovementAct({ ...jump, jumpHeightMetres: 0.25 }),
      standAct(2),
      stepOffAct(2),
      dropJumpAct({
        ...recording,
        boxHeightMetres: 0.3,
        jumpHeightMetres: 0.24,
        contactSeconds: 0.24,
      }),
      standAct(2),
      stepOffAct(1),
    ];
    const long = recordActs(recording, 0.5, acts);
    const truths = long.truths.filter((each) => each !== undefined);
    expect(truths.map((each) => Number(each.jumpHeightMetres.toFixed(9)))).toEqual([0.3, 0.25, 0.24]);
    const total = Array.from({ length: long.sampleCount }, (_, index) =>
      long.plates.reduce((sum, plate) => sum + (plate.force[index] ?? 0), 0),
    );
    // Empty: before stepping on, two flights, stepped off, flight of the drop jump, stepped off.
    const emptyStretches = total.filter((force, index) => force === 0 && (index === 0 || total[index - 1] !== 0));
    expect(emptyStretches).toHaveLength(6);
    expect(Math.min(...total)).toBe(0);
  });

  it("moves as one body: a fine integration through two jumps ends where the closed forms do", () => {
    // Trapezoid error: step²/12 times the jumps of slope, under 1e-6 over two jumps.
    const tolerance = 1e-5;
    const acts = [standAct(2), countermovementAct(jump), standAct(1.5), countermovementAct(jump), standAct(2)];
    const long = recordActs<JumpTruth | undefined>(recording, 0.5, acts);
    const { massKg } = recording;
    const body = { ...long, truth: { massKg, gravity } };
    const [end] = integrateFinely(body, 0.5, [long.sampleCount / 1000 - 0.1]);
    expect(Math.abs((end?.velocity ?? 1) - long.velocityAt(long.sampleCount / 1000 - 0.1))).toBeLessThan(tolerance);
    expect(Math.abs((end?.position ?? 1) - long.positionAt(long.sampleCount / 1000 - 0.1))).toBeLessThan(tolerance);
  });

  it("gives a countermovement jump the same truth as one alone in its recording", () => {
    const alone = simulateCountermovementJump({ ...recording, jumpHeightMetres: 0.3, swayMetres: 0.001 }).truth;
    const [, among] = recordActs<JumpTruth | undefined>(recording, 0.5, [
      standAct(2.2),
      countermovementAct(jump),
      standAct(2),
    ]).truths;
    expect(among?.timeToTakeoffSeconds).toBeCloseTo(alone.timeToTakeoffSeconds, 12);
    expect(among?.flightSeconds).toBeCloseTo(alone.flightSeconds, 12);
    // Sway differs in phase and moves the lowest position by less than 3 mm.
    expect(Math.abs((among?.depthMetres ?? 0) - alone.depthMetres)).toBeLessThan(0.003);
    expect(among?.phases.propulsion.grossImpulse.right).toBeCloseTo(
      (among?.phases.propulsion.grossImpulse.both ?? 0) / 2,
      9,
    );
  });

  it("can bounce after a landing: a second, short flight", () => {
    const long = recordActs<JumpTruth | undefined>({ ...recording, plates: "one" }, 0.5, [
      standAct(2),
      countermovementAct({ ...jump, bounceFlightSeconds: 0.09 }),
      standAct(2),
    ]);
    const force = long.plates[0]?.force ?? new Float64Array();
    const empty = force.filter((value) => value === 0).length / 1000;
    const flight = long.truths[1]?.flightSeconds ?? 0;
    expect(empty - flight).toBeCloseTo(0.09, 2);
  });
});

describe("options of a countermovement jump that long recordings need", () => {
  const clean = { seed: 2, rateHz: 1000, massKg: 70, limb: "both", plates: "two", jumpHeightMetres: 0.3 } as const;

  it("stepping off leaves an empty plate at the end", () => {
    const { plates } = simulateCountermovementJump({ ...clean, emptySecondsAfter: 1 });
    for (const plate of plates) expect(plate.force.slice(-950).every((force) => force === 0)).toBe(true);
  });

  it("drift grows along a line on its own plate, hum swings by its amplitude", () => {
    const still = simulateCountermovementJump(clean);
    const drifting = simulateCountermovementJump({ ...clean, plateDriftsNewtonsPerSecond: [2, 0] });
    const added = (plate: number, index: number): number =>
      (drifting.plates[plate]?.force[index] ?? 0) - (still.plates[plate]?.force[index] ?? 0);
    expect(added(0, 3000)).toBeCloseTo(6, 9);
    expect(added(1, 3000)).toBe(0);
    const humming = simulateCountermovementJump({ ...clean, hum: { newtons: 4, frequencyHz: 50 } });
    const swing = humming.plates.map((plate, side) =>
      Math.max(...plate.force.map((force, index) => force - (still.plates[side]?.force[index] ?? 0))),
    );
    // 20 samples a period: the highest sample lies within cos(π/20) of the amplitude.
    for (const each of swing) expect(each).toBeGreaterThan(4 * Math.cos(Math.PI / 20) - 1e-9);
    for (const each of swing) expect(each).toBeLessThanOrEqual(4 + 1e-9);
  });

  it("a leg swing dips the force a second time and leaves the take-off velocity alone", () => {
    const single = { ...clean, limb: "left", jumpHeightMetres: 0.14 } as const;
    const without = simulateCountermovementJump(single);
    const { firstMovement, lowestPosition, takeoff } = without.truth.events;
    for (const middleSeconds of [-0.25, lowestPosition - firstMovement + 0.08]) {
      const swinging = simulateCountermovementJump({
        ...single,
        legSwing: { metres: 0.015, seconds: 0.24, middleSeconds },
      });
      expect(swinging.truth.takeoffVelocity).toBe(without.truth.takeoffVelocity);
      const middle = firstMovement + middleSeconds;
      expect(middle).toBeLessThan(takeoff);
      expect(swinging.forceAt(middle)).toBeLessThan(without.forceAt(middle) - 0.2 * 70 * gravity);
    }
    expect(() =>
      simulateCountermovementJump({ ...single, legSwing: { metres: 0.015, seconds: 0.24, middleSeconds: 0.8 } }),
    ).toThrow(RangeError);
  });

  it("a straight landing edge is straight", () => {
    const { forceAt, truth } = simulateCountermovementJump({
      ...clean,
      straightTo: 0.5,
      touchdownRateNewtonsPerSecond: 20000,
    });
    for (const seconds of [0.001, 0.015]) {
      expect(forceAt(truth.events.touchdown + seconds)).toBeCloseTo(20000 * seconds, 5);
    }
  });
});
