import { describe, expect, test } from "vitest";
import type { Limb } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import type { TrialResult, WeightUsed } from "../../../core/result/trial-result.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import { methodsParagraph } from "../../../core/sheet/methods-paragraph.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { simulateHops } from "../../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import { told } from "../../told.ts";
import { asRecording } from "../simulated/simulated-trial.ts";
import { exampleSession, exampleTrial } from "./example-session.ts";

const athlete = { seed: 4, rateHz: 1000, massKg: 70, limb: "both", plates: "two" } as const;
const drop = { ...athlete, boxHeightMetres: 0.3, jumpHeightMetres: 0.24, contactSeconds: 0.22 } as const;
const hop = { contactSeconds: 0.2, jumpHeightMetres: 0.2 } as const;

function trialOf(simulated: SimulatedRecording, kind: TestKind, limb: Limb = "both", massKg?: number): TrialResult {
  const statement = { test: kind, limb, ...(massKg === undefined ? {} : { massKg }) };
  const { result } = analyzeRecording(asRecording(simulated), statement, defaultSettings)[0]!;
  if (result.status === "refused") throw new Error(result.findings.map((each) => told(each).message).join(" "));
  return result;
}

/** One trial of each kind that has words of its own. */
const trials = {
  countermovement: trialOf(simulateCountermovementJump({ ...athlete, jumpHeightMetres: 0.3 }), "countermovementJump"),
  squat: trialOf(simulateSquatJump({ ...athlete, jumpHeightMetres: 0.3, plateOffsetsNewtons: [3, -2] }), "squatJump"),
  drop: trialOf(simulateDropJump(drop), "dropJump"),
  dropWithoutStanding: trialOf(
    simulateDropJump({ ...drop, endsAfterTouchdownSeconds: 0.4 }),
    "dropJump",
    "both",
    athlete.massKg,
  ),
  landing: trialOf(simulateDropLanding({ ...athlete, boxHeightMetres: 0.3 }), "dropLanding"),
  hops: trialOf(
    simulateHops({ ...athlete, entryHeightMetres: 0.2, hops: Array.from({ length: 6 }, () => hop) }),
    "repeatedHops",
  ),
  hopsOfOneLeg: trialOf(
    simulateHops({
      ...athlete,
      limb: "left",
      entryHeightMetres: 0.08,
      hops: Array.from({ length: 6 }, () => ({ contactSeconds: 0.3, jumpHeightMetres: 0.08 })),
    }),
    "repeatedHops",
    "left",
  ),
  singleLeg: trialOf(
    simulateCountermovementJump({ ...athlete, limb: "right", jumpHeightMetres: 0.15 }),
    "countermovementJump",
    "right",
  ),
} as const;

type Name = keyof typeof trials;

const textOf = (...those: readonly TrialResult[]): string =>
  methodsParagraph(exampleSession({ trials: those, comparisons: [], criteria: [] }), defaultSettings);

/** Words of the paragraph, and the trials that bring them. */
const words: readonly (readonly [said: string, by: readonly Name[]])[] = [
  ["backwards from the least force of the unweighting", ["countermovement", "singleLeg"]],
  ["backwards from the largest force of a squat jump's rise", ["squat"]],
  ["A squat jump starts from a hold, in which velocity is zero", ["squat"]],
  ["by more than 5 % of body weight, or of the body by more than 2 cm, before the rise", ["squat"]],
  ["Braking (eccentric) runs from the greatest downward velocity", ["countermovement", "singleLeg"]],
  ["In a drop jump braking runs from the first touchdown", ["drop", "dropWithoutStanding"]],
  ["integrated backwards from quiet standing after the landing", ["drop", "landing"]],
  ["after which nobody stood still, gravity times half the flight time", ["dropWithoutStanding"]],
  ["The effective drop height is", ["drop", "dropWithoutStanding", "landing"]],
  [
    "Take-off is the first fall of force",
    ["countermovement", "squat", "drop", "dropWithoutStanding", "hops", "hopsOfOneLeg", "singleLeg"],
  ],
  ["Touchdown is the last rise of force", ["landing"]],
  ["In repeated hops a hop is a contact and the flight that follows it", ["hops", "hopsOfOneLeg"]],
  ["means over the 5 hops with the largest index", ["hops", "hopsOfOneLeg"]],
  ["on two legs among contacts below 250 ms", ["hops"]],
  [
    "A landing runs from touchdown",
    ["countermovement", "squat", "drop", "dropWithoutStanding", "landing", "singleLeg"],
  ],
  [
    "each limb's contacts are found on its own plate",
    ["countermovement", "squat", "drop", "dropWithoutStanding", "landing", "hops"],
  ],
  ["In single-leg trials (right)", ["singleLeg"]],
  ["In single-leg trials (left)", ["hopsOfOneLeg"]],
  ["more than 20 N under the other foot is reported", ["singleLeg", "hopsOfOneLeg"]],
  ["Jump height by impulse is", ["countermovement", "squat", "drop", "singleLeg"]],
  ["What the empty plates read was taken off in 1 trial.", ["squat"]],
];

describe("the methods paragraph speaks of a test exactly where a trial of it was analysed", () => {
  test.each(words)("“%s”", (said, by) => {
    const speaking = (Object.keys(trials) as readonly Name[]).filter((name) => textOf(trials[name]).includes(said));
    expect(speaking).toEqual(Object.keys(trials).filter((name) => (by as readonly string[]).includes(name)));
  });

  test("once for the whole session, however many trials there are", () => {
    const text = textOf(trials.squat, trials.countermovement, trials.squat, trials.hops, trials.landing);
    expect(text.match(/A squat jump starts/g)?.length).toBe(1);
    expect(text).toContain(
      "backwards from the least force of the unweighting or the largest force of a squat jump's rise",
    );
    expect(text).not.toContain("Touchdown is the last rise");
  });

  test("with the settings of each test", () => {
    const changed = settingsWith({
      squatDipFraction: 0.08,
      bestHops: 4,
      slowContactSeconds: 0.2,
      otherFootNewtons: 30,
    });
    const session = exampleSession({
      trials: [trials.squat, trials.hops, trials.singleLeg],
      comparisons: [],
      criteria: [],
    });
    const text = methodsParagraph(session, changed);
    for (const said of ["more than 8 % of body weight", "the 4 hops", "below 200 ms", "more than 30 N under"]) {
      expect(text).toContain(said);
    }
  });
});

describe("the methods paragraph names exactly the sources of weight that were used", () => {
  const said: readonly (readonly [from: WeightUsed["from"], words: string])[] = [
    ["quiet standing before the jump", "mean force over 1 s of quiet standing before the jump"],
    ["quiet standing before and after the jump", "the change of the mean impulse between the two windows"],
    ["quiet standing after the landing", "mean force over 1 s of quiet standing after the landing"],
    ["other trials on the same plates", "the weight of the session's other trials on the same plates was used"],
    ["other trials on other plates", "the weight of the session's trials on other plates was used"],
    ["entered mass", "weight follows from the entered mass"],
  ];

  test.each(said)("%s", (from) => {
    const trial = exampleTrial("a.csv", "both", 0.3, { weight: { newtons: 700, uncertainty: 1, from } });
    const text = textOf(trial);
    expect(said.filter(([, each]) => text.includes(each)).map(([name]) => name)).toEqual([from]);
    expect(text).toContain("Gravity is");
  });

  test("and none where no trial was weighed", () => {
    const { weight: _weight, ...unweighed } = exampleTrial("a.csv", "both", 0.3);
    const text = textOf(unweighed);
    expect(said.filter(([, each]) => text.includes(each))).toEqual([]);
    expect(text).not.toContain("Gravity is");
  });
});
