import { describe, expect, test } from "vitest";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { eventTime, measured, onlyTrial, quantile, uncertaintyOf } from "./simulated-trial.ts";

// Plate noise of 1.5 N (SD) and sway of 0.4 to 1.5 mm, no weight shift, 1000 Hz; odd seeds, kept for the final tables.
const trials = 300;
const rateHz = 1000;

const limit = {
  heightMedianMetres: 0.003,
  heightP95Metres: 0.008,
  bodyWeightP95Fraction: 0.001,
  contactP95Seconds: 0.002,
  onsetP95Seconds: 0.04,
  /** Of trials that lie beyond three of their own standard uncertainties. */
  silentlyWrong: 0.02,
} as const;

describe("noisy two-leg jumps with quiet standing at both ends", () => {
  const jumps = Array.from({ length: trials }, (_, index) => {
    const options = drawJump(2 * index + 1, { limb: "both", plates: "two", kind: "noisy", ratesHz: [rateHz] });
    const simulated = simulateCountermovementJump(options);
    return { truth: simulated.truth, trial: onlyTrial(simulated, "both") };
  });
  const errors = (error: (jump: (typeof jumps)[number]) => number): number[] =>
    jumps.map((jump) => Math.abs(error(jump)));

  test("have their impulse height within 3 mm in the median and 8 mm for 95 of 100", () => {
    const height = errors(({ truth, trial }) => measured(trial, "jumpHeightImpulse") - truth.jumpHeightMetres);
    expect(quantile(height, 0.5)).toBeLessThanOrEqual(limit.heightMedianMetres);
    expect(quantile(height, 0.95)).toBeLessThanOrEqual(limit.heightP95Metres);
  });

  test("have their body weight within 0.1 % for 95 of 100", () => {
    const weight = errors(({ truth, trial }) => measured(trial, "bodyWeight") / truth.bodyWeightNewtons - 1);
    expect(quantile(weight, 0.95)).toBeLessThanOrEqual(limit.bodyWeightP95Fraction);
  });

  test("have take-off and touchdown within 2 ms and onset within 40 ms for 95 of 100", () => {
    const takeoff = errors(({ truth, trial }) => eventTime(trial, "takeoff") - truth.events.takeoff);
    const touchdown = errors(({ truth, trial }) => eventTime(trial, "touchdown") - truth.events.touchdown);
    const onset = errors(({ truth, trial }) => eventTime(trial, "onset") - truth.events.firstMovement);
    expect(quantile(takeoff, 0.95)).toBeLessThanOrEqual(limit.contactP95Seconds);
    expect(quantile(touchdown, 0.95)).toBeLessThanOrEqual(limit.contactP95Seconds);
    expect(quantile(onset, 0.95)).toBeLessThanOrEqual(limit.onsetP95Seconds);
  });

  test.each(["bodyWeight", "takeoffVelocity", "jumpHeightImpulse", "jumpHeightFlightTime"] as const)(
    "lie beyond three standard uncertainties of %s in at most 2 of 100",
    (id) => {
      const beyond = jumps.filter(({ truth, trial }) => {
        const expected = {
          bodyWeight: truth.bodyWeightNewtons,
          takeoffVelocity: truth.takeoffVelocity,
          jumpHeightImpulse: truth.jumpHeightMetres,
          jumpHeightFlightTime: (truth.gravity * truth.flightSeconds ** 2) / 8,
        }[id];
        return Math.abs(measured(trial, id) - expected) > 3 * uncertaintyOf(trial, id);
      });
      expect(beyond.length / trials).toBeLessThanOrEqual(limit.silentlyWrong);
    },
  );
});
