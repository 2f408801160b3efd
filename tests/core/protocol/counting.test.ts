import { describe, expect, test } from "vitest";
import { proseFinding } from "../../../core/ground/finding.ts";
import { afterTrial } from "../../../core/protocol/after-trial.ts";
import { askedAnswers, type LikelyAnswer } from "../../../core/protocol/asked-answers.ts";
import { countsFor } from "../../../core/protocol/counting.ts";
import { sessionProgress } from "../../../core/protocol/session-progress.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import type { Protocol } from "../../../core/stated/protocol-schema.ts";
import { makeSession, makeTrial, makeTrials } from "./make-session.ts";

const sport = shippedProtocol("return-to-pivoting-sport")!;

/** The protocol's drop jumps alone. */
const dropJumps: Protocol = {
  ...sport,
  tests: sport.tests.filter((each) => each.test === "dropJump" && each.legs === "both"),
};

const twoLegDrop = { test: "dropJump", limb: "both" } as const;

/** What a session of these trials, as they were analysed, becomes when a likely answer is taken. */
function taken(
  { states }: LikelyAnswer,
  trials: readonly TrialResult[],
  { description }: SessionResult,
): SessionResult {
  if (states.kind === "feet") {
    const proved = (trial: TrialResult): TrialResult => ({
      ...trial,
      plates: trial.plates.map((plate) => ({ ...plate, proof: "stated" })),
    });
    return makeSession(
      trials.map((each) => (states.files.includes(each.file) ? proved(each) : each)),
      description,
    );
  }
  const rows = new Map(states.rows.map(({ file, ...said }) => [file, said]));
  return makeSession(
    trials.map((each) => ({ ...each, ...rows.get(each.file), trial: each.trial })),
    description,
  );
}

describe("a trial that lacks what its comparison needs", () => {
  const alternating = (at: number) => (at % 2 === 0 ? "left" : "right");

  test("does not count: four drop jumps without a box height are 0 of 4, wait, and are not repeated", () => {
    const trials = makeTrials(4, twoLegDrop).map((each, at): TrialResult => ({ ...each, leadingLeg: alternating(at) }));
    const session = makeSession(trials, { protocol: dropJumps });
    expect(sessionProgress(session)).toMatchObject({
      lines: ["Drop jump from 0.30\u00a0m: 0 of 4 (4 wait for an answer)."],
      missing: ["Drop jump from 0.30\u00a0m: 4 count once what they wait for is answered."],
    });
    expect(afterTrial(dropJumps, trials[3]!, session)).toBe(
      "Do not repeat it: it counts once that is answered. No more of these are needed: 0 of 4, 4 wait for an answer.",
    );
    const fromBox = session.criteria.find(({ criterion }) => criterion.id === "drop-jump-reactive-strength-index");
    expect(fromBox?.reason).toContain("No two-leg drop jump from 0.30\u00a0m that counts");
  });

  test("is asked about with the protocol's box as the likely answer, and counts once that is taken", () => {
    const trials = makeTrials(4, twoLegDrop).map((each, at): TrialResult => ({ ...each, leadingLeg: alternating(at) }));
    const session = makeSession(trials, { protocol: dropJumps });
    const [asked, ...more] = askedAnswers(session);
    expect(more).toEqual([]);
    expect(asked?.question).toBe(
      "The height of the box is not stated for 4 drop jumps: until it is, they do not count.",
    );
    expect(asked?.likely.map(({ words, because }) => `${words}, ${because}`)).toEqual([
      "0.30\u00a0m for these 4, as the protocol has it",
    ]);
    const answered = taken(asked!.likely[0]!, trials, session);
    expect(sessionProgress(answered)).toMatchObject({ lines: ["Drop jump from 0.30\u00a0m: 4 of 4."], missing: [] });
    expect(askedAnswers(answered)).toEqual([]);
  });

  test("is asked which leg led, and alternation that was begun is the likely answer", () => {
    const leads = ["left", "right", undefined, undefined] as const;
    const trials = leads.map((leadingLeg) =>
      makeTrial({ ...twoLegDrop, dropHeightMetres: 0.3, ...(leadingLeg && { leadingLeg }) }),
    );
    const session = makeSession(trials, { protocol: dropJumps });
    expect(sessionProgress(session)?.lines).toEqual(["Drop jump from 0.30\u00a0m: 2 of 4 (2 wait for an answer)."]);
    const [asked] = askedAnswers(session);
    expect(asked?.likely.map(({ words, because }) => `${words}, ${because}`)).toEqual([
      "Left, right for these 2, as the others alternate",
    ]);
    expect(sessionProgress(taken(asked!.likely[0]!, trials, session))?.missing).toEqual([]);
  });

  test("may have led in turns or two and two, either leg first, while none was stated; the uninvolved leg comes first", () => {
    const trials = makeTrials(4, { ...twoLegDrop, dropHeightMetres: 0.3 });
    const session = makeSession(trials, { protocol: dropJumps, involved: "left" });
    const [asked] = askedAnswers(session);
    expect(asked?.likely.map(({ words }) => words)).toEqual([
      "Right, left, right, left for these 4",
      "Left, right, left, right for these 4",
      "Right, right, left, left for these 4",
      "Left, left, right, right for these 4",
    ]);
    for (const likely of asked!.likely) expect(sessionProgress(taken(likely, trials, session))?.missing).toEqual([]);
  });

  test("is answered in the order of the numbers in the files' names, jump-10 after jump-9", () => {
    const trials = ["jump-8.csv", "jump-9.csv", "jump-10.csv"].map((file, at) => ({
      ...makeTrial({ ...twoLegDrop, dropHeightMetres: 0.3, ...(at < 2 && { leadingLeg: alternating(at) }) }),
      file,
    }));
    const [asked] = askedAnswers(makeSession(trials, { protocol: dropJumps }));
    expect(asked?.likely[0]?.states).toMatchObject({ rows: [{ file: "jump-10.csv", leadingLeg: "left" }] });
  });

  test("is asked which foot was where, as the columns are called or the other way round; contradicted, it has no likely answer", () => {
    const trials = makeTrials(4, { test: "countermovementJump", limb: "both", plateProof: "unproved" });
    const session = makeSession(trials, { protocol: sport });
    expect(sessionProgress(session)?.lines[0]).toBe("Countermovement jump: 0 of 4 (4 wait for an answer).");
    const [asked] = askedAnswers(session);
    expect(asked?.likely.map(({ words }) => words)).toEqual([
      "Left foot on plate left and right foot on plate right for these 4",
      "Right foot on plate left and left foot on plate right for these 4",
    ]);
    // A jump of the left leg on the plate called right.
    const [called] = trials;
    const onRight = { ...makeTrial({ test: "countermovementJump", limb: "left" }), plates: called!.plates };
    const contradicted = makeSession([...trials, onRight], { protocol: sport }, new Map([[onRight.file, "right"]]));
    expect(askedAnswers(contradicted)).toMatchObject([{ about: "feet", likely: [] }]);
    expect(
      countsFor(contradicted.trials.find((each) => each.file === onRight.file)!, contradicted.trials),
    ).toMatchObject({
      counts: false,
      waitsFor: ["feet"],
    });
  });

  test("does not count without the measures of its comparison, says why, and no answer would help", () => {
    const sound = makeTrial({ test: "countermovementJump", limb: "left" });
    const cause = proseFinding("starts-moving", "warning", "The athlete was moving.", "Stand still.", {
      removes: ["jumpHeightImpulse"],
    });
    const trial = { ...sound, status: "partial", measures: sound.measures.slice(1), findings: [cause] } as const;
    expect(sound.measures[0]?.id).toBe("jumpHeightImpulse");
    expect(countsFor(trial, [trial])).toEqual({ counts: false, reason: "The athlete was moving.", waitsFor: [] });
    const unsaid = { ...trial, findings: [] };
    expect(countsFor(unsaid, [unsaid]).reason).toBe("Missing from it: jump height, by impulse.");
  });

  test("counts on one plate without feet and leading leg, but not beside trials of its test on two", () => {
    const onOne = makeTrial({ ...twoLegDrop, dropHeightMetres: 0.3, plateProof: "one plate" });
    expect(countsFor(onOne, [onOne]).counts).toBe(true);
    const onTwo = makeTrial({ ...twoLegDrop, dropHeightMetres: 0.3 });
    expect(countsFor(onOne, [onOne, onTwo])).toMatchObject({ counts: false, waitsFor: [] });
  });
});

describe("a two-leg drop jump", () => {
  const led = (left: number, right: number) => [
    ...makeTrials(left, { ...twoLegDrop, dropHeightMetres: 0.3, leadingLeg: "left" }),
    ...makeTrials(right, { ...twoLegDrop, dropHeightMetres: 0.3, leadingLeg: "right" }),
  ];
  const progressOf = (left: number, right: number, protocol = dropJumps) =>
    sessionProgress(makeSession(led(left, right), { protocol }));

  test("counts two with each leg leading: four with the left leg leading are two of four", () => {
    expect(progressOf(4, 0)).toMatchObject({
      lines: ["Drop jump from 0.30\u00a0m: 2 of 4."],
      missing: ["Two more valid drop jumps from 0.30\u00a0m, with the right leg leading."],
    });
    expect(progressOf(2, 2)?.missing).toEqual([]);
    expect(progressOf(0, 0)?.missing).toEqual([
      "Four valid drop jumps from 0.30\u00a0m, two with the left leg leading and two with the right.",
    ]);
  });

  test("leads once with each leg at least where a protocol of earlier versions does not say how often", () => {
    const [{ perLeadingLeg: _per, ...entry }] = dropJumps.tests as [Protocol["tests"][number]];
    const before = { ...dropJumps, tests: [entry] };
    expect(progressOf(4, 0, before)?.missing).toEqual([
      "One more valid drop jump from 0.30\u00a0m, with the right leg leading.",
    ]);
    expect(progressOf(3, 1, before)?.missing).toEqual([]);
  });
});

describe("practice jumps", () => {
  test("are no attempts and count for nothing, and are counted as practice", () => {
    const single = { test: "countermovementJump", limb: "right" } as const;
    const trials = [...makeTrials(2, { ...single, practice: true }), ...makeTrials(3, single)];
    const session = makeSession(trials, { protocol: sport });
    expect(sessionProgress(session)?.lines[2]).toBe(
      "Single-leg countermovement jump: right 3 of 4 (2 practice jumps), left 0 of 4.",
    );
    expect(session.comparisons.find((each) => each.measure === "jumpHeightImpulse")?.second.values).toHaveLength(3);
    expect(afterTrial(sport, trials[1]!, session)).toBe(
      "2 of at most 2 practice jumps; 3 of 4 count so far. No more practice.",
    );
  });
});

describe("what a criterion suggests", () => {
  const close = (count: number) =>
    [0, 1].flatMap((leg) =>
      Array.from({ length: count }, (_, at) =>
        makeTrial({
          test: "countermovementJump",
          limb: leg === 0 ? "left" : "right",
          value: (leg === 0 ? 0.913 : 1) + 0.03 * (at % 2),
        }),
      ),
    );
  const suggested = (trials: readonly TrialResult[], mostAttempts: number) => {
    const tests = sport.tests.map((each) => ({ ...each, mostAttempts }));
    const session = makeSession(trials, { protocol: { ...sport, tests } });
    return session.criteria.find(({ criterion }) => criterion.id === "single-leg-countermovement-jump-height-symmetry");
  };

  test("stays within the session's own protocol: four of at most four are done, and no more are suggested", () => {
    expect(suggested(close(4), 6)).toMatchObject({
      status: "too-close-to-call",
      moreTrials: expect.stringMatching(/^(One|Two) more trials? a side would probably settle this\.$/),
    });
    expect(suggested(close(4), 4)?.moreTrials).toBe("More trials today cannot settle this.");
  });

  test("stays within the landings of a day", () => {
    const landed = makeTrials(18, { test: "countermovementJump", limb: "left", practice: true });
    const session = [...landed, ...makeTrials(4, { test: "countermovementJump", limb: "left", practice: true })];
    expect(suggested([...close(4), ...landed], 6)?.moreTrials).toMatch(/^(One|Two) more/);
    expect(suggested([...close(4), ...session], 6)?.moreTrials).toBe("More trials today cannot settle this.");
  });
});
