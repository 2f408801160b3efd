import { describe, expect, test } from "vitest";
import { analyzeSession } from "../../core/analyze.ts";
import type { Finding } from "../../core/ground/finding.ts";
import { sha256Hex } from "../../core/ground/sha256.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { told } from "../told.ts";
import { rightAnswers } from "./bad-trials-answers.ts";
import { faultyKinds } from "./simulate/faulty/faulty-kinds.ts";
import type { FaultyFile } from "./simulate/faulty/faulty-trial.ts";

// Odd seeds were not used while the findings were written.
const seeds = [1, 3, 5];
const encoder = new TextEncoder();
const name = "jump.csv";

function analyzed({ text, said, massKg }: FaultyFile): SessionResult {
  const bytes = encoder.encode(text);
  return analyzeSession(
    {
      folder: "",
      files: [{ path: name, bytes, sha256: sha256Hex(bytes) }],
      unreadable: [],
      description: { files: [{ file: name, ...said }], ...(massKg === undefined ? {} : { massKg }) },
      descriptionFindings: [],
      stated: {},
    },
    defaultSettings,
  ).result;
}

function allFindings({ trials, findings }: SessionResult): readonly Finding[] {
  return [...trials.flatMap((each) => each.findings), ...findings];
}

test("Every kind of bad trial has its right answer, and there are no answers besides", () => {
  expect(Object.keys(rightAnswers).sort()).toEqual(faultyKinds.map(({ kind }) => kind).sort());
});

describe.each(faultyKinds)("$kind: $fault", ({ kind, bad, near }) => {
  const answer = rightAnswers[kind]!;

  test.each(seeds)("is refused or warned for that reason (seed %i)", (seed) => {
    const result = analyzed(bad(seed));
    if ("trials" in answer) {
      expect(result.trials.map((each) => each.status)).toEqual(new Array(answer.trials).fill("analysed"));
      return;
    }
    const right = allFindings(result).filter(({ code }) => answer.codes.includes(code));
    // Slow stretch-shortening is a kind of contact, not a fault: METHODS §6 names it, and a note does that.
    const least = kind === "slow-contact" ? ["note", "warning", "refusal"] : ["warning", "refusal"];
    expect(right.filter(({ severity }) => least.includes(severity))).not.toEqual([]);
    for (const { message, action } of right.map((each) => told(each))) {
      expect(message).not.toBe("");
      expect(action).not.toBe("");
    }
    // Whatever refuses a trial is among the reasons that are right.
    for (const trial of result.trials.filter((each) => each.status === "refused")) {
      const refusals = trial.findings.filter(({ severity }) => severity === "refusal").map(({ code }) => code);
      expect(refusals.some((code) => answer.codes.includes(code))).toBe(true);
    }
  });

  test.each(seeds)("is not what its near miss is told (seed %i)", (seed) => {
    const result = analyzed(near(seed));
    expect(result.trials.filter((each) => each.status === "refused")).toEqual([]);
    const forbidden = "codes" in answer ? answer.codes : [];
    expect(allFindings(result).filter(({ code }) => forbidden.includes(code))).toEqual([]);
    if ("trials" in answer) expect(result.trials).toHaveLength(1);
  });
});

test("A wrong limb is said of the session's plates, and the message names the trial", () => {
  const kind = faultyKinds.find((each) => each.kind === "wrong-limb")!;
  const said = analyzed(kind.bad(1)).findings.find(({ code }) => code === "plates-contradict");
  expect(`${told(said)?.message} ${told(said)?.where}`).toContain(name);
});

test("Hum and noise are refused with their figure, and hum of the mains with its frequency", () => {
  const messageOf = (kind: string): string =>
    told(
      allFindings(analyzed(faultyKinds.find((each) => each.kind === kind)!.bad(1))).find(
        ({ code }) => code === "plate-noisy",
      )!,
    ).message;
  // Two plates with 60 N of amplitude, 0.618 of a turn apart (by hand): 2·60·|cos(0.309 turns)|/√2 = 31 N. White noise
  // of 60 N on each: √2·60 = 85 N, read where it is small, within 10 %.
  expect(messageOf("hum")).toMatch(/varies by 3[012] N .* 50 Hz/);
  expect(messageOf("noise")).toMatch(/varies by (7[6-9]|8\d|9[0-3]) N/);
});
