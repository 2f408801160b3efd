import { describe, expect, test } from "vitest";
import type { Limb } from "../../core/ground/limb.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { analyzeRecording } from "../../core/session/analyze-recording.ts";
import { defaultSettings, type Settings } from "../../core/settings/settings.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { drawDropLanding, drawHops, drawSquatJump } from "../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../core/simulate/draw-drop.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../core/simulate/drop-landing.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../core/simulate/squat-jump.ts";
import { asRecording } from "../core/simulated/simulated-trial.ts";
import { hasShared } from "../worked/worked-example.ts";
import { differences, exactly, nearly, type OracleTolerances } from "./compare-with-oracle.ts";
import { plainTrial, plainWorkedExample, recordingOf } from "./oracle-trial.ts";
import { plainDropJump } from "./plain-drop.ts";
import { plainDropLanding } from "./plain-drop-landing.ts";
import { type PlainBout, type PlainHop, type PlainLimbTime, plainRepeatedHops } from "./plain-hops.ts";
import { plainSquatJump } from "./plain-squat.ts";
import type { PlainResult, PlainTrial } from "./plain-values.ts";

type Kind = "clean" | "noisy";

interface Bounds {
  readonly limb: Limb;
  readonly plates: "one" | "two";
  readonly kind: Kind;
}

interface Subject {
  readonly test: TestKind;
  readonly simulate: (seed: number, bounds: Bounds) => SimulatedRecording;
  readonly oracle: (trial: PlainTrial, settings: Settings) => PlainResult;
}

const subjects: readonly Subject[] = [
  {
    test: "squatJump",
    simulate: (seed, bounds) => simulateSquatJump(drawSquatJump(seed, bounds)),
    oracle: plainSquatJump,
  },
  {
    test: "dropJump",
    simulate: (seed, bounds) => simulateDropJump(drawDropJump(seed, bounds)),
    oracle: plainDropJump,
  },
  {
    test: "dropLanding",
    simulate: (seed, bounds) => simulateDropLanding(drawDropLanding(seed, bounds)),
    oracle: plainDropLanding,
  },
  {
    test: "repeatedHops",
    simulate: (seed, bounds) => simulateHops(drawHops(seed, bounds)),
    oracle: plainRepeatedHops,
  },
];

const layouts = [
  { limb: "both", plates: "two" },
  { limb: "both", plates: "one" },
  { limb: "left", plates: "one" },
  { limb: "right", plates: "two" },
] as const;

/** Odd seeds: detectors are tuned on even ones only. Four layouts in turn; shapes, rates and sizes as drawn. */
const seeds = Array.from({ length: 8 }, (_, index) => 2001 + 2 * index);

describe.each(subjects)("program and oracle agree on every event and value of $test", ({ test: kind, ...subject }) => {
  const analysed = (seed: number, noise: Kind): { program: TrialResult; oracle: PlainResult } => {
    const layout = layouts[((seed - 2001) / 2) % layouts.length]!;
    const simulated = subject.simulate(seed, { ...layout, kind: noise });
    return {
      program: analyse(simulated, kind, layout.limb),
      oracle: subject.oracle(plainTrial(simulated, layout.limb), defaultSettings),
    };
  };
  const compare = ({ program, oracle }: ReturnType<typeof analysed>, tolerances: OracleTolerances): string[] => {
    const { hops = [], limbTimes = [] } = oracle as Partial<PlainBout>;
    return [
      ...differences(program, oracle, tolerances),
      ...hopDifferences(program, hops, tolerances.relative),
      ...limbTimeDifferences(program, limbTimes, tolerances.seconds),
    ];
  };

  test.each(seeds)("without noise, seed %i", (seed) => {
    expect(compare(analysed(seed, "clean"), exactly)).toEqual([]);
  });

  test("with plate noise and sway: all nearly, and all but one in eight exactly", () => {
    const noisy = seeds.map((seed) => analysed(seed, "noisy"));
    for (const [index, each] of noisy.entries()) expect(compare(each, nearly), `seed ${seeds[index]}`).toEqual([]);
    const exact = noisy.filter((each) => compare(each, exactly).length === 0);
    expect(exact.length).toBeGreaterThanOrEqual((7 / 8) * seeds.length);
  });
});

test.each(seeds)(
  "both find a drop jump with entered mass and nobody standing still after it alike, seed %i",
  (seed) => {
    const layout = layouts[((seed - 2001) / 2) % layouts.length]!;
    const drawn = drawDropJump(seed, { ...layout, kind: "clean" });
    const simulated = simulateDropJump({ ...drawn, endsAfterTouchdownSeconds: 0.33 });
    const program = analyse(simulated, "dropJump", layout.limb, drawn.massKg);
    const trial = { ...plainTrial(simulated, layout.limb), massKg: drawn.massKg };
    expect(program.weight?.from).toBe("entered mass");
    expect(differences(program, plainDropJump(trial, defaultSettings), exactly)).toEqual([]);
  },
);

test.each([
  { seed: 2025, layout: layouts[2], endsAfterTouchdownSeconds: 0.4 },
  { seed: 2001, layout: layouts[0], endsAfterTouchdownSeconds: 0.45 },
])("both find a drop jump that ends $endsAfterTouchdownSeconds s after touchdown alike, seed $seed", (short) => {
  const drawn = drawDropJump(short.seed, { ...short.layout, kind: "clean" });
  const { endsAfterTouchdownSeconds, layout } = short;
  const simulated = simulateDropJump({ ...drawn, endsAfterTouchdownSeconds });
  const program = analyse(simulated, "dropJump", layout.limb, drawn.massKg);
  const trial = { ...plainTrial(simulated, layout.limb), massKg: drawn.massKg };
  expect(differences(program, plainDropJump(trial, defaultSettings), exactly)).toEqual([]);
});

test.skipIf(!hasShared("worked-examples"))(
  "program and oracle agree on every event and value of the worked drop jump",
  () => {
    const example = plainWorkedExample("drop-two-legs.csv");
    const program = analyse(recordingOf(example), "dropJump", "both");
    expect(differences(program, plainDropJump(example, defaultSettings), exactly)).toEqual([]);
  },
);

function analyse(simulated: SimulatedRecording, kind: TestKind, limb: Limb, massKg?: number): TrialResult {
  const statement = { test: kind, limb, ...(massKg === undefined ? {} : { massKg }) };
  const trials = analyzeRecording(asRecording(simulated), statement, defaultSettings);
  const [only] = trials;
  if (trials.length !== 1 || only === undefined) throw new Error(`Expected one trial, found ${trials.length}.`);
  return only.result;
}

/** What differs between the two tables of hops. */
function hopDifferences({ hops = [] }: TrialResult, expected: readonly PlainHop[], relative: number): string[] {
  const lines: string[] = [];
  if (hops.length !== expected.length) lines.push(`program ${hops.length} hops, oracle ${expected.length}`);
  for (const [index, hop] of expected.entries()) {
    for (const [name, value] of Object.entries(hop)) {
      const ours = (hops[index] as unknown as Readonly<Record<string, number>> | undefined)?.[name];
      if (ours === undefined || Math.abs(ours - value) > relative * Math.abs(value)) {
        lines.push(`hop ${index + 1}, ${name}: program ${ours}, oracle ${value}`);
      }
    }
  }
  return lines;
}

/** What differs between the contact times of the limbs, hop by hop. */
function limbTimeDifferences(
  { hops = [] }: TrialResult,
  expected: readonly PlainLimbTime[],
  seconds: number,
): string[] {
  const ours = hops.flatMap(({ contactIndex, limbs = [] }) => limbs.map((limb) => ({ contactIndex, ...limb })));
  const counts =
    ours.length === expected.length ? [] : [`program ${ours.length} limb times, oracle ${expected.length}`];
  const lines = expected.flatMap(({ contactIndex, side, contactTime }) => {
    const own = ours.find((each) => each.contactIndex === contactIndex && each.side === side)?.contactTime;
    const agree = own !== undefined && Math.abs(own - contactTime) <= seconds;
    return agree ? [] : [`contact ${contactIndex} of the ${side} limb: program ${own}, oracle ${contactTime}`];
  });
  return [...counts, ...lines];
}
