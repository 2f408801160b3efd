import { describe, expect, test } from "vitest";
import type { Limb } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import { expectedMeasures } from "../../../core/measures/expected-measures.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SimulatedRecording } from "../../../core/simulate/countermovement-jump.ts";
import { drawDropLanding, drawHops, drawSquatJump } from "../../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import type { BatteryBounds } from "../../../core/simulate/draw-parts.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { simulateHops } from "../../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import { told } from "../../told.ts";
import { asRecording, eventTime, measured, quantile } from "./simulated-trial.ts";

// Physical truth comes from the simulator's closed forms. Odd seeds were not used while the detectors were written.
const seeds = Array.from({ length: 60 }, (_, index) => 2 * index + 1);

const tolerance = {
  contactSeconds: 0.002,
  reactiveStrengthFraction: 0.02,
  limbImpulseFraction: 0.003,
  dropHeightFraction: 0.015,
  /** Half a sample at 500 Hz, the slowest rate drawn, times gravity, m/s. */
  takeoffVelocity: 0.01,
  turningPointSamples: 1,
  onsetSeconds: 0.04,
  landingForceFraction: 0.002,
  /** Noisy, quiet standing at one end. */
  bodyWeightP95Fraction: 0.0025,
  contactP95Seconds: 0.0025,
  reactiveStrengthP95Fraction: 0.03,
  edgeP95Seconds: 0.002,
} as const;

const kinds: readonly (readonly [string, Limb, BatteryBounds["plates"]])[] = [
  ["two legs on two plates", "both", "two"],
  ["two legs on one plate", "both", "one"],
  ["the left leg on one plate", "left", "one"],
  ["the right leg on two plates", "right", "two"],
];

function analysed(simulated: SimulatedRecording, kind: TestKind, limb: Limb): TrialResult {
  const trials = analyzeRecording(asRecording(simulated), { test: kind, limb }, defaultSettings);
  const [only] = trials;
  if (trials.length !== 1 || only === undefined) throw new Error(`Expected one trial, found ${trials.length}.`);
  const { result } = only;
  if (result.status !== "analysed") throw new Error(result.findings.map((each) => told(each).message).join(" "));
  return result;
}

/** Every measure of the test is made or named in a finding, and the trace alone says the same test. */
function expectComplete(trial: TrialResult, kind: TestKind, onTwoPlates: boolean): void {
  const removed = new Set(trial.findings.flatMap((each) => each.removes));
  const made = new Set(trial.measures.map((each) => each.id));
  const expected = expectedMeasures(kind, onTwoPlates);
  expect(expected.filter((id) => !made.has(id) && !removed.has(id))).toEqual([]);
  expect([...made].filter((id) => !expected.includes(id))).toEqual([]);
  expect(trial.findings.some((each) => each.code === "self-check-broken")).toBe(false);
  expect(trial.recognised?.test).toBe(kind);
}

function eventOf(trial: TrialResult, name: string, contactIndex: number): number {
  return trial.events.find((each) => each.name === name && each.contactIndex === contactIndex && !each.side)!.time;
}

describe.each(kinds)("noise-free drop jumps on %s", (_, limb, plates) => {
  const jumps = seeds.map((seed) => {
    const simulated = simulateDropJump(drawDropJump(seed, { limb, plates, kind: "clean" }));
    return { simulated, truth: simulated.truth, trial: analysed(simulated, "dropJump", limb) };
  });

  test("have every measure, and their contact, flight and reactive strength index as they really were", () => {
    for (const { truth, trial } of jumps) {
      expectComplete(trial, "dropJump", limb === "both" && plates === "two");
      const contact = measured(trial, "contactTime") - truth.contactSeconds;
      expect(Math.abs(contact)).toBeLessThanOrEqual(tolerance.contactSeconds);
      const flight = measured(trial, "flightTime") - truth.flightSeconds;
      expect(Math.abs(flight)).toBeLessThanOrEqual(tolerance.contactSeconds);
      const index = measured(trial, "reactiveStrengthIndex") / truth.reactiveStrengthIndex - 1;
      expect(Math.abs(index)).toBeLessThanOrEqual(tolerance.reactiveStrengthFraction);
    }
  });

  test("have drop height and take-off velocity backwards from the standing, and the lowest position", () => {
    for (const { simulated, truth, trial } of jumps) {
      const drop = measured(trial, "dropHeightEffective") / truth.dropHeightEffectiveMetres - 1;
      expect(Math.abs(drop)).toBeLessThanOrEqual(tolerance.dropHeightFraction);
      const velocity = measured(trial, "takeoffVelocity") - truth.takeoffVelocity;
      expect(Math.abs(velocity)).toBeLessThanOrEqual(tolerance.takeoffVelocity);
      const lowest = eventTime(trial, "lowestPosition") - truth.events.lowestPosition;
      expect(Math.abs(lowest) * simulated.rateHz).toBeLessThanOrEqual(tolerance.turningPointSamples);
    }
  });

  test("have gross impulses of both phases, of each limb where two plates tell them apart", () => {
    const sides = limb === "both" && plates === "two" ? (["both", "left", "right"] as const) : ([limb] as const);
    for (const { truth, trial } of jumps) {
      for (const side of sides) {
        for (const phase of ["braking", "propulsion"] as const) {
          const expected = truth.phases[phase].grossImpulse[side];
          const error = measured(trial, `${phase}Impulse`, side) / expected - 1;
          expect(Math.abs(error)).toBeLessThanOrEqual(tolerance.limbImpulseFraction);
        }
      }
    }
  });
});

describe.each(kinds)("noise-free squat jumps on %s", (_, limb, plates) => {
  const jumps = seeds.map((seed) => {
    const simulated = simulateSquatJump(drawSquatJump(seed, { limb, plates, kind: "clean" }));
    return { truth: simulated.truth, trial: analysed(simulated, "squatJump", limb) };
  });

  test("have their onset at the rise, their velocity from the hold, and neither unweighting nor braking", () => {
    for (const { truth, trial } of jumps) {
      expectComplete(trial, "squatJump", limb === "both" && plates === "two");
      const onset = eventTime(trial, "onset") - truth.events.firstMovement;
      expect(Math.abs(onset)).toBeLessThanOrEqual(tolerance.onsetSeconds);
      const velocity = measured(trial, "takeoffVelocity") - truth.takeoffVelocity;
      expect(Math.abs(velocity)).toBeLessThanOrEqual(tolerance.takeoffVelocity);
      expect(trial.findings.map((each) => each.code)).not.toContain("dip-in-squat-jump");
      expect(trial.measures.filter((each) => /^(unweighting|braking|countermovement)/.test(each.id))).toEqual([]);
    }
  });
});

describe.each(kinds)("noise-free drop landings on %s", (_, limb, plates) => {
  test("have their drop height and their peak force", () => {
    for (const seed of seeds) {
      const simulated = simulateDropLanding(drawDropLanding(seed, { limb, plates, kind: "clean" }));
      const { truth } = simulated;
      const trial = analysed(simulated, "dropLanding", limb);
      expectComplete(trial, "dropLanding", limb === "both" && plates === "two");
      const drop = measured(trial, "dropHeightEffective") / truth.dropHeightEffectiveMetres - 1;
      expect(Math.abs(drop)).toBeLessThanOrEqual(tolerance.dropHeightFraction);
      const peak = measured(trial, "peakLandingForce") / truth.landing.peakForce[limb] - 1;
      expect(Math.abs(peak)).toBeLessThanOrEqual(tolerance.landingForceFraction);
    }
  });
});

describe.each(kinds)("noise-free bouts of hops on %s", (_, limb, plates) => {
  test("have every hop and no other: neither the entry jump nor the last contact", () => {
    for (const seed of seeds) {
      const simulated = simulateHops(drawHops(seed, { limb, plates, kind: "clean" }));
      const hops = simulated.truth.contacts.flatMap((contact) =>
        contact.hop === undefined ? [] : [{ ...contact.hop, touchdown: contact.touchdown }],
      );
      const [trial] = analyzeRecording(asRecording(simulated), { test: "repeatedHops", limb }, defaultSettings);
      const { result } = trial!;
      expectComplete(result, "repeatedHops", limb === "both" && plates === "two");
      expect(result.hops?.map((hop) => hop.contactIndex)).toEqual(hops.map((_hop, index) => index + 1));
      expect(measured(result, "hopsFound", limb)).toBe(hops.length);
      for (const [index, hop] of hops.entries()) {
        const own = result.hops![index]!;
        expect(Math.abs(own.contactTime - hop.contactSeconds)).toBeLessThanOrEqual(tolerance.contactSeconds);
        expect(Math.abs(own.flightTime - hop.flightSeconds)).toBeLessThanOrEqual(tolerance.contactSeconds);
        const touchdown = eventOf(result, "touchdown", index + 1) - hop.touchdown;
        expect(Math.abs(touchdown)).toBeLessThanOrEqual(tolerance.contactSeconds);
      }
    }
  });
});

describe.each(kinds)("noisy drop jumps at 1000 Hz on %s", (_, limb, plates) => {
  const jumps = seeds.map((seed) => {
    const bounds = { limb, plates, kind: "noisy", ratesHz: [1000] } as const;
    const simulated = simulateDropJump(drawDropJump(seed, bounds));
    const [trial] = analyzeRecording(asRecording(simulated), { test: "dropJump", limb }, defaultSettings);
    return { truth: simulated.truth, trial: trial!.result };
  });
  const p95 = (error: (jump: (typeof jumps)[number]) => number): number =>
    quantile(
      jumps.map((jump) => Math.abs(error(jump))),
      0.95,
    );

  test("are none of them refused, and all recognised", () => {
    expect(jumps.filter(({ trial }) => trial.status === "refused")).toEqual([]);
    expect(jumps.filter(({ trial }) => trial.recognised?.test !== "dropJump")).toEqual([]);
  });

  test("have weight, contact, index and edges within their bounds for 95 of 100", () => {
    const weight = p95(({ truth, trial }) => measured(trial, "bodyWeight") / truth.bodyWeightNewtons - 1);
    expect(weight).toBeLessThanOrEqual(tolerance.bodyWeightP95Fraction);
    const contact = p95(({ truth, trial }) => measured(trial, "contactTime") - truth.contactSeconds);
    expect(contact).toBeLessThanOrEqual(tolerance.contactP95Seconds);
    const index = p95(({ truth, trial }) => measured(trial, "reactiveStrengthIndex") / truth.reactiveStrengthIndex - 1);
    expect(index).toBeLessThanOrEqual(tolerance.reactiveStrengthP95Fraction);
    const takeoff = p95(({ truth, trial }) => eventTime(trial, "takeoff") - truth.events.takeoff);
    const touchdown = p95(({ truth, trial }) => eventOf(trial, "touchdown", 1) - truth.events.touchdown);
    expect(Math.max(takeoff, touchdown)).toBeLessThanOrEqual(tolerance.edgeP95Seconds);
  });
});
