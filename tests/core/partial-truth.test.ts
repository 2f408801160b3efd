import { describe, expect, test } from "vitest";
import type { TestKind } from "../../core/ground/test-kind.ts";
import { expectedMeasures } from "../../core/measures/expected-measures.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { analyzeRecording } from "../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { cutRecording, limitForce } from "../../core/simulate/recording-faults.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import { type Cut, cuts, drawCut } from "../bench/partial/draw-cut.ts";
import { judgeTrial } from "../bench/varied/judge-trial.ts";
import { told } from "../told.ts";
import { athlete, jumpOf, singleOf } from "./simulate/faulty/faulty-trial.ts";
import { asRecording, measured } from "./simulated/simulated-trial.ts";

// Odd seeds were not used while the rules were written. Truth comes from the simulator's closed forms.
const seeds = [1, 3, 5];

function trialOf(recording: SimulatedRecording, kind: TestKind, limb: "both" | "left" = "both"): TrialResult {
  const trials = analyzeRecording(asRecording(recording), { test: kind, limb }, defaultSettings);
  expect(trials).toHaveLength(1);
  return trials[0]!.result;
}

const ids = (trial: TrialResult): readonly string[] => [...new Set(trial.measures.map(({ id }) => id))];

/** A jump of which the recording begins after the first movement and ends after touchdown, by so many seconds. */
function cutJump(seed: number, begins: number, ends: number) {
  const jump = jumpOf(seed);
  const { firstMovement, touchdown } = jump.truth.events;
  return { jump, recording: cutRecording(jump, firstMovement + begins, touchdown + ends) };
}

describe("A jump on two plates recorded from mid-movement and cut in its landing", () => {
  test.each(seeds)(
    "keeps flight, contact differences and the landing peak, and no measure with a weight (seed %i)",
    (seed) => {
      for (const begins of [0.1, 0.45]) {
        const { jump, recording } = cutJump(seed, begins, 0.4);
        const trial = trialOf(recording, "countermovementJump");
        expect(trial.status).toBe("partial");
        expect(trial.weight).toBeUndefined();
        expect([...ids(trial)].sort()).toEqual([
          "flightTime",
          "jumpHeightFlightTime",
          "limbTakeoffDifference",
          "limbTouchdownDifference",
          "peakLandingForce",
          "timeToPeakLandingForce",
        ]);
        const flight = trial.measures.find(({ id }) => id === "flightTime")!;
        expect(Math.abs(flight.value - jump.truth.flightSeconds)).toBeLessThan(3 * flight.uncertainty!);
        expect(measured(trial, "peakLandingForce") / jump.truth.phases.landing.peakForce.both).toBeCloseTo(1, 1);
      }
    },
  );

  test("is refused for neither noise nor a plate that is never left, and says the physical reason", () => {
    for (const seed of seeds) {
      for (const begins of [0.1, 0.3, 0.45]) {
        for (const ends of [0.1, 0.25, 0.6]) {
          const codes = trialOf(cutJump(seed, begins, ends).recording, "countermovementJump").findings.map(
            ({ code }) => code,
          );
          expect(codes).toContain("starts-moving");
          for (const wrong of ["plate-noisy", "no-takeoff", "no-quiet-standing"]) expect(codes).not.toContain(wrong);
        }
      }
    }
  });

  test("names every missing measure in a finding, and the one that names them says what to do", () => {
    const trial = trialOf(cutJump(1, 0.1, 0.4).recording, "countermovementJump");
    const named = new Set(trial.findings.flatMap(({ removes }) => removes));
    const missing = expectedMeasures("countermovementJump", true).filter((id) => !ids(trial).includes(id));
    expect(missing.filter((id) => !named.has(id))).toEqual([]);
    const cause = trial.findings.find(({ code }) => code === "starts-moving")!;
    expect(cause.removes).toContain("jumpHeightImpulse");
    expect(told(cause).action).toContain("or give the body mass");
    expect(cause.answers).toEqual([{ asks: "massKg" }]);
  });

  test("holds no value that is no number, in its result", () => {
    const text = JSON.stringify(trialOf(cutJump(1, 0.1, 0.4).recording, "countermovementJump"));
    expect(text).not.toContain("null");
  });

  test("is refused where it lands beside the plates too, because nothing is left", () => {
    const jump = jumpOf(1, { landsBesidePlates: true });
    const begun = cutRecording(jump, jump.truth.events.firstMovement + 0.2, Number.POSITIVE_INFINITY);
    const trial = trialOf(begun, "countermovementJump");
    expect([trial.status, trial.measures]).toEqual(["refused", []]);
    const [refusal] = trial.findings.filter(({ severity }) => severity === "refusal");
    expect(["starts-moving", "no-takeoff"]).toContain(refusal!.code);
    expect(told(refusal!).message).not.toContain("never left");
  });
});

describe("A jump recorded from mid-movement with two seconds of standing after it", () => {
  test.each(seeds)(
    "is weighed there, its velocity counted back; nothing is counted from the first movement (seed %i)",
    (seed) => {
      const { jump, recording } = cutJump(seed, 0.1, 99);
      const trial = trialOf(recording, "countermovementJump");
      expect(trial.weight?.from).toBe("quiet standing after the landing");
      const height = trial.measures.find(({ id }) => id === "jumpHeightImpulse")!;
      expect(Math.abs(height.value - jump.truth.jumpHeightMetres)).toBeLessThan(3 * height.uncertainty!);
      expect(ids(trial)).toContain("brakingImpulse");
      for (const id of ["timeToTakeoff", "reactiveStrengthIndexModified", "unweightingTime"]) {
        expect(ids(trial)).not.toContain(id);
        expect(trial.findings.find(({ code }) => code === "starts-moving")!.removes).toContain(id);
      }
    },
  );

  test("has no velocity where its landing exceeded the plate's range: force is missing on the way back", () => {
    const { jump, recording } = cutJump(1, 0.1, 99);
    const most = 0.8 * jump.truth.phases.landing.peakForce.both;
    const [left, right] = recording.plates;
    const total = left!.force.map((newtons, index) => newtons + right!.force[index]!);
    const onePlate = { ...recording, plates: [{ ...left!, limb: "both" as const, force: total }] };
    expect(ids(trialOf(limitForce(onePlate, most), "countermovementJump"))).not.toContain("jumpHeightImpulse");
  });
});

test.each(cuts.map((cut): [string, Cut] => [cut.name, cut]))(
  "What is left of a %s is right within three of its uncertainties, in eleven recordings of twelve at least",
  (_, cut) => {
    const verdicts = Array.from({ length: 12 }, (_, index) => judgeTrial(drawCut(2 * index + 1, cut)));
    for (const { outcome, compared } of verdicts) {
      expect(outcome).toBe("warned");
      expect(compared).toBeGreaterThan(0);
    }
    expect(verdicts.filter(({ wrong }) => wrong.length > 0).length).toBeLessThanOrEqual(1);
  },
);

test("Hops of unknown weight keep their contacts and indices, without a stiffness", () => {
  const hops = [0.2, 0.21, 0.2, 0.19, 0.2].map((contactSeconds) => ({ contactSeconds, jumpHeightMetres: 0.2 }));
  const bout = simulateHops({ ...athlete(1), entryHeightMetres: 0.18, hops });
  const last = bout.truth.contacts.at(-1)!.touchdown;
  const first = bout.truth.contacts[0]!.touchdown;
  const trial = trialOf(cutRecording(bout, first - 0.5, last + 0.2), "repeatedHops");
  expect(ids(trial)).toContain("reactiveStrengthIndexBestFive");
  expect(ids(trial)).not.toContain("hopStiffness");
  expect(trial.hops!.every((hop) => hop.hopStiffness === undefined)).toBe(true);
});

describe("A load held in the dip or in the push while velocity changes", () => {
  const deep = [
    ["even", 0.55, 1.4],
    ["even", 0.65, 1.8],
    ["slow-dip", 0.55, 1.4],
  ] as const;

  test.each(deep)(
    "is a push and no standing: a %s jump of %f m depth in %f s is analysed",
    (pushShape, depthMetres, seconds) => {
      for (const seed of seeds) {
        const jump = jumpOf(seed, { pushShape, depthMetres, timeToTakeoffSeconds: seconds, jumpHeightMetres: 0.15 });
        const trial = trialOf(jump, "countermovementJump");
        expect(trial.findings.map(({ code }) => code)).not.toContain("load-changes");
        expect(trial.status).toBe("analysed");
        const height = trial.measures.find(({ id }) => id === "jumpHeightImpulse")!;
        expect(Math.abs(height.value - 0.15)).toBeLessThan(3 * height.uncertainty!);
      }
    },
  );
});

test("A single leg's cut jump keeps its flight too", () => {
  for (const seed of seeds) {
    const jump = singleOf(seed);
    const { firstMovement, touchdown } = jump.truth.events;
    const trial = trialOf(cutRecording(jump, firstMovement + 0.3, touchdown + 0.35), "countermovementJump", "left");
    expect(trial.status).toBe("partial");
    expect(ids(trial)).toContain("flightTime");
  }
});
