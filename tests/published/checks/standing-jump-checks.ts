import { integrate, velocityAt, withWeight } from "../../../core/events/kinematics.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { measured, onlyTrial, uncertaintyOf } from "../../core/simulated/simulated-trial.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

const gravity = 9.80665;
const identities = "h = v²/2g and t = 2v/g with level take-off and landing, worked out by hand";
const propagation = "propagation by JCGM 100:2008, 5.1.2 (clause from memory), worked out by hand";
/** Contact events are found to a fraction of a millisecond, which limits how exactly the identities can be met. */
const measuredFraction = 0.004;

/** Take-off velocity in m/s, rise in m, flight in s. */
const rows = [
  [2.0, 0.20394, 0.40789],
  [2.5, 0.31866, 0.50986],
  [2.7, 0.37169, 0.55065],
  [3.0, 0.45887, 0.61183],
] as const;

const trials = new Map<number, TrialResult>();

/** A simulated jump on one plate that leaves the ground with a velocity and lands as it left. */
function jumpOf(velocity: number): TrialResult {
  const known = trials.get(velocity);
  if (known !== undefined) return known;
  const simulated = simulateCountermovementJump({
    ...drawJump(11, { limb: "both", plates: "one", kind: "clean", ratesHz: [1000], heightMetres: [0.3, 0.31] }),
    jumpHeightMetres: velocity ** 2 / (2 * gravity),
    touchdownLowerMetres: 0,
  });
  const trial = onlyTrial(simulated, "both");
  trials.set(velocity, trial);
  return trial;
}

function identitiesOf([velocity, height, flight]: (typeof rows)[number]): PublishedCheck[] {
  const from = `a simulated jump that leaves the ground at ${velocity.toFixed(1)} m/s`;
  return [
    {
      check: `height by impulse of ${from}`,
      source: identities,
      expected: height,
      unit: "m",
      tolerance: measuredFraction * height,
      ours: () => measured(jumpOf(velocity), "jumpHeightImpulse"),
    },
    {
      check: `flight time of ${from}`,
      source: identities,
      expected: flight,
      unit: "s",
      tolerance: measuredFraction * flight,
      ours: () => measured(jumpOf(velocity), "flightTime"),
    },
  ];
}

/** What a wrong weight does to a velocity of 2.7 m/s reached 0.9 s after weighing 75 kg, m/s; the same either way. */
function velocityError(weightErrorNewtons: number): number {
  const weight = 75 * gravity;
  const force = new Float64Array(901).fill(weight * (1 + 2.7 / (gravity * 0.9)));
  const motion = integrate({ rateHz: 1000, force }, { start: 0, end: 901 }, weight, gravity);
  const weighedLow = velocityAt(withWeight(motion, weight - weightErrorNewtons), 900);
  const weighedHigh = velocityAt(withWeight(motion, weight + weightErrorNewtons), 900);
  return (weighedLow - weighedHigh) / 2;
}

export const standingJumpChecks: CheckGroup = {
  subject: "Jumps from standing",
  checks: [
    ...rows.flatMap(identitiesOf),
    {
      check: "height g·t²/8 that a flight of 0.5 s stands for, from a measured flight scaled to it",
      source: "g·t²/8, worked out by hand",
      expected: 0.30646,
      unit: "m",
      tolerance: 5e-6,
      ours: () => {
        const trial = jumpOf(2.5);
        return measured(trial, "jumpHeightFlightTime") * (0.5 / measured(trial, "flightTime")) ** 2;
      },
    },
    {
      check: "velocity error when 75 kg are weighed 1 N wrong, 0.9 s before a take-off at 2.7 m/s",
      source: "dv = dW·(T + v/g)/m with m = W/g, worked out by hand",
      expected: 0.0157,
      unit: "m/s",
      tolerance: 5e-5,
      ours: () => velocityError(1),
    },
    {
      check: "the height error that follows, v·dv/g",
      source: "worked out by hand",
      expected: 0.0043,
      unit: "m",
      tolerance: 5e-5,
      ours: () => (2.7 * velocityError(1)) / gravity,
    },
    {
      check: "velocity error when the weight is 0.1 % wrong",
      source: "worked out by hand",
      expected: 0.0115,
      unit: "m/s",
      tolerance: 5e-5,
      ours: () => velocityError(0.001 * 75 * gravity),
    },
    {
      check: "u(height) for u(velocity) = 0.01 m/s at 2.7 m/s: v·u(v)/g",
      source: propagation,
      expected: 0.00275,
      unit: "m",
      // The program propagates by finite differences, in which the small change of v counts too.
      tolerance: 2e-5,
      ours: () => {
        const trial = jumpOf(2.7);
        return (0.01 * uncertaintyOf(trial, "jumpHeightImpulse")) / uncertaintyOf(trial, "takeoffVelocity");
      },
    },
    {
      check: "u(height) for u(flight time) = 1 ms at 0.55 s: g·t·u(t)/4",
      source: propagation,
      expected: 0.00135,
      unit: "m",
      tolerance: 1e-5,
      ours: () => {
        const trial = jumpOf(2.7);
        return (0.001 * uncertaintyOf(trial, "jumpHeightFlightTime")) / uncertaintyOf(trial, "flightTime");
      },
    },
  ],
};
