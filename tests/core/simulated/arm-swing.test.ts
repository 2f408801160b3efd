import { describe, expect, test } from "vitest";
import type { Limb } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import { expectedMeasures } from "../../../core/measures/expected-measures.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { type SimulatedJump, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawArmSwingJump } from "../../../core/simulate/draw-arm-swing.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { findMaximum, integrate } from "../../../core/simulate/quadrature.ts";
import { trueCountermovementJump } from "../../bench/varied/true-values.ts";
import { asRecording, eventTime, measured } from "./simulated-trial.ts";

const seeds = Array.from({ length: 20 }, (_, index) => 2 * index + 1);
const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

const sides: readonly (readonly [string, Limb, "one" | "two"])[] = [
  ["two legs on two plates", "both", "two"],
  ["two legs on one plate", "both", "one"],
  ["the left leg on one plate", "left", "one"],
  ["the right leg on two plates", "right", "two"],
];

function analysed(simulated: SimulatedJump, test: TestKind, limb: Limb) {
  const trials = analyzeRecording(asRecording(simulated), { test, limb }, defaultSettings);
  const [only] = trials;
  if (trials.length !== 1 || only === undefined) throw new Error(`Expected one trial, found ${trials.length}.`);
  return only.result;
}

describe.each(sides)("jumps with arm swing on %s", (_, limb, plates) => {
  const jumps = seeds.map((seed) =>
    simulateCountermovementJump(drawArmSwingJump(seed, { limb, plates, kind: "clean" })),
  );

  test("are moved by their force alone: it gives the velocity of take-off and the rise to it", () => {
    for (const { truth, forceAt, velocityAt, positionAt } of jumps) {
      const { firstMovement, endOfUnweighting, lowestPosition, takeoff } = truth.events;
      const breaks = [endOfUnweighting, lowestPosition];
      const net = (time: number) => (forceAt(time) - truth.bodyWeightNewtons) / truth.massKg;
      expect(integrate(net, firstMovement, takeoff, breaks)).toBeCloseTo(truth.takeoffVelocity, 3);
      const risen = positionAt(takeoff) - positionAt(lowestPosition);
      expect(integrate(velocityAt, lowestPosition, takeoff, [])).toBeCloseTo(risen, 4);
    }
  });

  test("take longer, are pushed later and leave the plate with the body higher than jumps with the hands on the hips", () => {
    const plain = seeds.map((seed) => simulateCountermovementJump(drawJump(seed, { limb, plates, kind: "clean" })));
    const of = (all: readonly SimulatedJump[], value: (jump: SimulatedJump) => number) => mean(all.map(value));
    for (const value of [
      ({ truth }: SimulatedJump) => truth.timeToTakeoffSeconds,
      ({ truth }: SimulatedJump) => truth.positionAtTakeoffMetres,
      ({ truth, forceAt }: SimulatedJump) => {
        const { firstMovement, takeoff } = truth.events;
        return (findMaximum(forceAt, firstMovement, takeoff).time - firstMovement) / (takeoff - firstMovement);
      },
    ]) {
      expect(of(jumps, value)).toBeGreaterThan(of(plain, value));
    }
  });

  test("have every measure, weight, events and height as they really were", () => {
    const expected = expectedMeasures("countermovementJumpArmSwing", limb === "both" && plates === "two");
    for (const simulated of jumps) {
      const { truth } = simulated;
      const trial = analysed(simulated, "countermovementJumpArmSwing", limb);
      expect([trial.status, trial.test]).toEqual(["analysed", "countermovementJumpArmSwing"]);
      const removed = trial.findings.flatMap((each) => each.removes);
      const made = trial.measures.map((each) => each.id);
      expect(expected.filter((id) => !made.includes(id) && !removed.includes(id))).toEqual([]);
      expect(made.filter((id) => !expected.includes(id))).toEqual([]);
      expect(trial.weight?.from).toBe("quiet standing before and after the jump");
      expect(Math.abs(measured(trial, "bodyWeight") / truth.bodyWeightNewtons - 1)).toBeLessThan(0.0005);
      for (const name of ["endOfUnweighting", "lowestPosition", "takeoff", "touchdown", "landingEnd"] as const) {
        expect(Math.abs(eventTime(trial, name) - truth.events[name])).toBeLessThan(0.003);
      }
      expect(Math.abs(eventTime(trial, "onset") - truth.events.firstMovement)).toBeLessThan(0.06);
      const really = new Map(trueCountermovementJump(simulated, limb).map((each) => [`${each.id} ${each.side}`, each]));
      const height = really.get(`jumpHeightImpulse ${limb}`)!.value;
      expect(Math.abs(measured(trial, "jumpHeightImpulse") - height)).toBeLessThan(0.003);
      for (const phase of ["braking", "propulsion"] as const) {
        const impulse = really.get(`${phase}Impulse ${limb}`)!.value;
        expect(Math.abs(measured(trial, `${phase}Impulse`) / impulse - 1)).toBeLessThan(0.01);
      }
    }
  });

  test("come out as the same numbers under either name, and are never offered from the trace", () => {
    for (const simulated of jumps.slice(0, 5)) {
      const swung = analysed(simulated, "countermovementJumpArmSwing", limb);
      const plain = analysed(simulated, "countermovementJump", limb);
      expect(swung.measures).toEqual(plain.measures);
      expect(swung.events).toEqual(plain.events);
      expect(swung.recognised?.test).toBe("countermovementJump");
    }
  });
});
