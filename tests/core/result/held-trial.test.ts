import { describe, expect, test } from "vitest";
import { trialVerdict } from "../../../core/protocol/trial-verdict.ts";
import { countsInMeans, isHeld } from "../../../core/result/held-trial.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";

const trial: TrialResult = {
  file: "countermovement-left-1.csv",
  sha256: "",
  trial: 1,
  status: "analysed",
  plates: [],
  events: [],
  measures: [],
  findings: [],
  seen: false,
  edits: [],
};
const held = { reason: "its weight is 3.4 % below the session's" };

describe("a trial whose weight differs", () => {
  test("is held: it counts in no mean and for no protocol, and says why", () => {
    expect([isHeld(trial), isHeld({ held })]).toEqual([false, true]);
    expect(countsInMeans({ ...trial, held })).toBe(false);
    expect(trialVerdict({ ...trial, held })).toEqual({
      counts: false,
      reason: "Held: its weight is 3.4 % below the session's",
    });
  });

  test("counts once a person keeps it", () => {
    const kept: TrialResult = { ...trial, kept: true };
    expect([isHeld(kept), countsInMeans(kept), trialVerdict(kept).counts]).toEqual([false, true, true]);
  });
});
