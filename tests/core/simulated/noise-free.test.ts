import { describe, expect, test } from "vitest";
import type { Limb } from "../../../core/ground/limb.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { type DrawBounds, drawJump } from "../../../core/simulate/draw-jump.ts";
import { isFinalSeed } from "../../../core/simulate/options.ts";
import { eventTime, measured, onlyTrial } from "./simulated-trial.ts";

// Physical truth comes from the simulator's closed forms. Odd seeds were not used while the detectors were written.
const seeds = Array.from({ length: 120 }, (_, index) => 2 * index + 1);

const tolerance = {
  takeoffVelocityFraction: 0.002,
  heightFraction: 0.004,
  /** Jumps below this height are held to a velocity instead. */
  lowJumpMetres: 0.25,
  lowJumpVelocity: 0.006,
  turningPointSamples: 1,
  takeoffSeconds: 0.0007,
  touchdownSeconds: 0.002,
  onsetSeconds: 0.04,
  /** Gross impulses of the phases against truth. */
  impulseFraction: 0.001,
  /** Impulses summed from force against m·Δv. */
  selfCheckFraction: 1e-6,
} as const;

const kinds: readonly (readonly [string, Limb, DrawBounds["plates"]])[] = [
  ["two legs on two plates", "both", "two"],
  ["two legs on one plate", "both", "one"],
  ["the left leg on one plate", "left", "one"],
  ["the right leg on two plates", "right", "two"],
];

describe.each(kinds)("noise-free jumps on %s", (_, limb, plates) => {
  const jumps = seeds.map((seed) => {
    const simulated = simulateCountermovementJump(drawJump(seed, { limb, plates, kind: "clean" }));
    return { seed, simulated, truth: simulated.truth, trial: onlyTrial(simulated, limb) };
  });
  const worst = (error: (jump: (typeof jumps)[number]) => number): number => Math.max(...jumps.map(error));

  test("come from seeds kept for the final tables and span 0.1 to 0.5 m or the single-leg range", () => {
    expect(seeds.every(isFinalSeed)).toBe(true);
    const heights = jumps.map((jump) => jump.truth.jumpHeightMetres);
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(limb === "both" ? 0.4 : 0.15);
  });

  test("have take-off velocity and impulse height within their tolerances", () => {
    const high = jumps.filter((jump) => jump.truth.jumpHeightMetres >= tolerance.lowJumpMetres);
    for (const { truth, trial } of high) {
      const velocity = measured(trial, "takeoffVelocity");
      expect(Math.abs(velocity / truth.takeoffVelocity - 1)).toBeLessThanOrEqual(tolerance.takeoffVelocityFraction);
      const height = measured(trial, "jumpHeightImpulse");
      expect(Math.abs(height / truth.jumpHeightMetres - 1)).toBeLessThanOrEqual(tolerance.heightFraction);
    }
    const low = jumps.filter((jump) => jump.truth.jumpHeightMetres < tolerance.lowJumpMetres);
    for (const { truth, trial } of low) {
      const error = Math.abs(measured(trial, "takeoffVelocity") - truth.takeoffVelocity);
      expect(error).toBeLessThanOrEqual(tolerance.lowJumpVelocity);
    }
    expect(high.length + low.length).toBe(jumps.length);
  });

  test.each(["endOfUnweighting", "lowestPosition"] as const)("have their %s within one sample", (name) => {
    const samples = worst(
      ({ simulated, truth, trial }) => Math.abs(eventTime(trial, name) - truth.events[name]) * simulated.rateHz,
    );
    expect(samples).toBeLessThanOrEqual(tolerance.turningPointSamples);
  });

  test.each([
    ["takeoff", tolerance.takeoffSeconds],
    ["touchdown", tolerance.touchdownSeconds],
  ] as const)("have their %s within the larger of one sample and %f s", (name, seconds) => {
    const excess = worst(
      ({ simulated, truth, trial }) =>
        Math.abs(eventTime(trial, name) - truth.events[name]) - Math.max(1 / simulated.rateHz, seconds),
    );
    expect(excess).toBeLessThanOrEqual(0);
  });

  test("have their onset within 40 ms of the first intended movement", () => {
    const error = worst(({ truth, trial }) => Math.abs(eventTime(trial, "onset") - truth.events.firstMovement));
    expect(error).toBeLessThanOrEqual(tolerance.onsetSeconds);
  });

  test("have gross impulses of both phases, of each limb where two plates tell them apart", () => {
    for (const { truth, trial } of jumps) {
      const sides = limb === "both" && plates === "two" ? (["both", "left", "right"] as const) : ([limb] as const);
      for (const side of sides) {
        for (const phase of ["braking", "propulsion"] as const) {
          const value = measured(trial, `${phase}Impulse`, side);
          const expected = truth.phases[phase].grossImpulse[side];
          expect(Math.abs(value / expected - 1)).toBeLessThanOrEqual(tolerance.impulseFraction);
        }
      }
    }
  });

  test("have net impulses, summed from force, that equal mass times velocity change", () => {
    for (const { trial } of jumps) {
      // Propulsion starts at the lowest position, where velocity is zero.
      const momentum = measured(trial, "bodyMass") * measured(trial, "takeoffVelocity");
      const error = Math.abs(measured(trial, "propulsionNetImpulse") / momentum - 1);
      expect(error).toBeLessThanOrEqual(tolerance.selfCheckFraction);
      expect(trial.findings.some((each) => each.code === "self-check-broken")).toBe(false);
    }
  });
});
