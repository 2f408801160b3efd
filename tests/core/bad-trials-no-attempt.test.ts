import { describe, expect, test } from "vitest";
import { testKinds } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { recordActs } from "../../core/simulate/act.ts";
import { simulateBrokenOffJump } from "../../core/simulate/broken-off-jump.ts";
import { countermovementAct } from "../../core/simulate/countermovement-act.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { joinRecordings } from "../../core/simulate/recording-faults.ts";
import { standAct } from "../../core/simulate/standing-acts.ts";
import { analyzeBytes } from "../worked/worked-example.ts";
import type { Said } from "./simulate/faulty/faulty-trial.ts";
import { athlete, jumpOf, saidJump, singleOf, written } from "./simulate/faulty/faulty-trial.ts";
import { eventTime } from "./simulated/simulated-trial.ts";

// What is no jump, no onset and no drop. Odd seeds were not used while the rules were written.
const seeds = [1, 3, 5];
/** One sample at 1000 Hz and the shape of the last contact, as in the tables of accuracy. */
const takeoffSeconds = 0.002;
/** The onset is the least certain event; METHODS places it by a band about the weight. */
const onsetSeconds = 0.04;

function trialsOf(recording: Parameters<typeof written>[0], said: Said): readonly TrialResult[] {
  const bytes = { "jump.csv": new TextEncoder().encode(written(recording, said).text) };
  return analyzeBytes(bytes, {}, { files: [{ file: "jump.csv", ...said }] }).result.trials;
}

function standing(seed: number, depthMetres: number): SimulatedRecording {
  const { massKg, swayMetres } = athlete(seed);
  const options = { seed, rateHz: 1000, massKg, plates: "two", depthMetres, swayMetres } as const;
  return simulateBrokenOffJump({ ...options, plateNoiseNewtons: 1.2 });
}

const codes = (trial: TrialResult | undefined): readonly string[] => trial?.findings.map(({ code }) => code) ?? [];

describe("A bounce after the landing", () => {
  test.each(seeds)("is not a second jump: one trial, whose events are those of the first flight (seed %i)", (seed) => {
    const jump = {
      massKg: athlete(seed).massKg,
      limb: "both",
      jumpHeightMetres: 0.27,
      bounceFlightSeconds: 0.12,
    } as const;
    const recording = recordActs(athlete(seed), 0.5, [standAct(2.2), countermovementAct(jump), standAct(2.6)]);
    const trials = trialsOf(recording, saidJump);
    expect(trials).toHaveLength(1);
    expect(codes(trials[0])).toContain("bounce-after-landing");
    // A rise of 0.27 m and the same way down (by hand): 2·√(2·0.27/g) = 0.469 s, two centimetres lower at most 0.49 s.
    const flight = eventTime(trials[0]!, "touchdown") - eventTime(trials[0]!, "takeoff");
    expect(flight).toBeGreaterThan(0.46);
    expect(flight).toBeLessThan(0.49);
  });
});

describe("A weight shift before the dip", () => {
  test.each(seeds)("is not the onset, on two legs or on one (seed %i)", (seed) => {
    const weightShift = { metres: 0.008, rightShareChange: 0.08, seconds: 0.8, endsBeforeSeconds: 0.35 };
    const two = jumpOf(seed, { weightShift, quietSecondsBefore: 3.2 });
    const [shifted] = trialsOf(two, saidJump);
    const error = eventTime(shifted!, "onset") - two.truth.events.firstMovement;
    expect(Math.abs(error)).toBeLessThanOrEqual(onsetSeconds);

    const one = singleOf(seed, { weightShift: { ...weightShift, rightShareChange: 0 }, quietSecondsBefore: 3.2 });
    const [single] = trialsOf(one, { test: "countermovementJump", limb: "left" });
    const ofSingle = eventTime(single!, "onset") - one.truth.events.firstMovement;
    expect(Math.abs(ofSingle)).toBeLessThanOrEqual(onsetSeconds);
  });
});

describe("A broken-off jump", () => {
  test.each(seeds)("is not a jump: refused as what it is, without a measure or an event (seed %i)", (seed) => {
    const [trial] = trialsOf(standing(seed, 0.22), saidJump);
    expect(trial).toMatchObject({ status: "refused", measures: [], events: [] });
    expect(codes(trial)).toContain("broken-off");
  });

  test.each(seeds)("before a jump is only noted, and the jump is the one that leaves the plate (seed %i)", (seed) => {
    const brokenOff = standing(seed, 0.22);
    const { massKg, swayMetres } = athlete(seed);
    const jump = jumpOf(seed, { massKg, swayMetres });
    const trials = trialsOf(joinRecordings([brokenOff, jump]), saidJump);
    expect(trials).toHaveLength(1);
    expect(codes(trials[0])).toContain("broken-off");
    const start = brokenOff.sampleCount / brokenOff.rateHz;
    const takeoff = eventTime(trials[0]!, "takeoff") - start - jump.truth.events.takeoff;
    expect(Math.abs(takeoff)).toBeLessThanOrEqual(takeoffSeconds);
    expect(eventTime(trials[0]!, "onset")).toBeGreaterThan(start);
  });
});

describe("Standing on the plate", () => {
  test.each(testKinds)("is no %s, whatever the label says", (kind) => {
    for (const seed of seeds) {
      for (const limb of ["both", "left"] as const) {
        const [trial] = trialsOf(standing(seed, 0.002), { test: kind, limb, dropHeightMetres: 0.3 });
        expect(trial).toMatchObject({ status: "refused", measures: [], events: [] });
      }
    }
  });

  test("before a jump is no drop onto the plate, whatever the label says", () => {
    for (const seed of seeds) {
      for (const kind of ["dropJump", "dropLanding"] as const) {
        const [trial] = trialsOf(jumpOf(seed), { test: kind, limb: "both", dropHeightMetres: 0.3 });
        expect(trial).toMatchObject({ status: "refused", measures: [] });
        expect(codes(trial)).toContain("test-contradicts");
      }
    }
  });
});
