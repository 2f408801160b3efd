import { describe, expect, test } from "vitest";
import type { Recording } from "../../../core/recording/recording.ts";
import { draftTrials } from "../../../core/session/draft-trials.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { cutRecording } from "../../../core/simulate/recording-faults.ts";
import { accuracyConditions } from "../../bench/varied/conditions.ts";
import { drawVariedTrial } from "../../bench/varied/draw-trial.ts";
import { judgeTrial } from "../../bench/varied/judge-trial.ts";
import { told } from "../../told.ts";
import { jumpOf } from "../simulate/faulty/faulty-trial.ts";
import { asRecording } from "../simulated/simulated-trial.ts";

const weight = 700;

/** What is offered for a recording of which nothing is stated, trial by trial, with the refusal's sentence. */
function offersOf(recording: Recording) {
  const file = { path: "recording", bytes: new Uint8Array(0), sha256: "" };
  const input = { folder: "", files: [], unreadable: [], description: {}, descriptionFindings: [], stated: {} };
  return draftTrials({ file, recording, findings: [] }, input, defaultSettings).map((draft) => ({
    test: draft.recognised?.test,
    message: told(draft.findings.find(({ code }) => code === "test-not-stated"))?.message ?? "",
  }));
}

/** The force of one stance of walking: two humps of 1.15 body weights and a flat valley of 0.73 (as textbooks of gait draw it). */
function stance(seconds: number): number {
  const length = 0.7;
  if (seconds <= 0 || seconds >= length) return 0;
  const phase = seconds / length;
  const edges = Math.min(1, phase / 0.18, (1 - phase) / 0.18);
  return weight * edges * (1.15 - 0.42 * Math.exp(-(((phase - 0.5) / 0.2) ** 4)));
}

/** Somebody walks across one or two plates, a step on each, at 1000 Hz; noise of a newton. Ends soon after the last. */
function walking(plates: 1 | 2, standsBefore: number, begunSeconds = 0): Recording {
  const begins = 1 + standsBefore;
  const count = Math.round(1000 * (begins + 0.6 + 0.6 * plates));
  const noise = (index: number, plate: number): number => Math.sin(12.9898 * (index + 7919 * plate)) * 1.4;
  const force = (plate: number): Float64Array =>
    Float64Array.from({ length: count }, (_, index) => {
      const time = index / 1000;
      const stands = standsBefore > 0 && time < begins ? weight / plates : 0;
      const steps =
        standsBefore > 0 ? (plate === 0 ? stance(time - begins + 0.12) : 0) : stance(time - 1 - 0.58 * plate);
      return (standsBefore > 0 && time < begins ? stands : steps) + noise(index, plate);
    });
  const all = plates === 1 ? [force(0)] : [force(0), force(1)];
  const limbs = plates === 1 ? (["both"] as const) : (["left", "right"] as const);
  const first = Math.round(1000 * begunSeconds);
  return {
    rateHz: 1000,
    sampleCount: count - first,
    timeOriginSeconds: 0,
    plates: all.map((own, index) => ({
      name: `plate ${index + 1}`,
      limb: limbs[index]!,
      proof: "unproved",
      force: own.slice(first),
    })),
  };
}

describe("Walking across the plates", () => {
  test.each([
    [1, 0, 0],
    [1, 0, 1.1],
    [2, 0, 0],
    [2, 0, 1.1],
    [1, 2, 0],
    [2, 2, 0],
  ] as const)(
    "on %i plate(s), after %i s of standing, recorded from %f s on, is offered as no test",
    (plates, stands, begun) => {
      for (const offer of offersOf(walking(plates, stands, begun))) expect(offer.test).toBeUndefined();
    },
  );

  test("says why nothing is offered, whether the recording begins before the step or in it", () => {
    for (const begunSeconds of [0, 1.1]) {
      const messages = offersOf(walking(1, 0, begunSeconds)).map(({ message }) => message);
      expect(messages).toHaveLength(1);
      expect(messages[0]).toMatch(/offered as none: nobody stands still before/);
    }
  });
});

test("A jump begun in mid-movement that lands beside the plates is offered as none", () => {
  const jump = jumpOf(1, { landsBesidePlates: true });
  const begun = cutRecording(jump, jump.truth.events.lowestPosition - 0.1, Number.POSITIVE_INFINITY);
  for (const offer of offersOf(asRecording(begun))) expect(offer.test).toBeUndefined();
});

test("Of fifty good trials of every test each is offered as what it was", () => {
  const condition = accuracyConditions[0]!;
  const misread = Array.from({ length: 50 }, (_, index) => drawVariedTrial(2 * index + 2001, condition)).flatMap(
    (trial) => {
      const { misread: as } = judgeTrial(trial);
      return as === undefined ? [] : [{ seed: trial.seed, as }];
    },
  );
  expect(misread).toEqual([]);
});
