import { describe, expect, test } from "vitest";
import { isOfLimb } from "../../core/events/event.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { StatedOptions } from "../../core/stated/stated-options.ts";
import { analyzeBytes } from "../worked/worked-example.ts";
import { measured } from "./simulated/simulated-trial.ts";

// Simulated drop jumps written as tables and analysed as a session, as the command line would.
const box = 0.3;
/** Moved events are kept to 0.1 ms. */
const keptSeconds = 0.0001;
const drop = {
  seed: 8,
  rateHz: 1000,
  massKg: 70,
  limb: "both",
  plates: "two",
  boxHeightMetres: box,
  jumpHeightMetres: 0.24,
  contactSeconds: 0.22,
} as const;
const single = { ...drop, plates: "one", jumpHeightMetres: 0.13, contactSeconds: 0.32 } as const;

function table({ rateHz, sampleCount, plates }: SimulatedRecording): Uint8Array {
  const rows = Array.from({ length: sampleCount }, (_, index) =>
    [(index / rateHz).toFixed(4), ...plates.map((plate) => plate.force[index]!.toFixed(4))].join(","),
  );
  const head = ["time (s)", ...plates.map((plate) => `${plate.name} (N)`)].join(",");
  return new TextEncoder().encode([head, ...rows].join("\n"));
}

function analysed(
  files: Readonly<Record<string, SimulatedRecording>>,
  description: SessionDescription = {},
  stated: StatedOptions = {},
) {
  const bytes = Object.fromEntries(Object.entries(files).map(([path, recording]) => [path, table(recording)]));
  const { result } = analyzeBytes(bytes, stated, description);
  const trial = (path: string): TrialResult => result.trials.find((each) => each.file === path)!;
  return { result, trial };
}

const codes = (trial: TrialResult): readonly string[] => trial.findings.map((each) => each.code);

describe("the height of the box", () => {
  const files = (effective: number) => ({
    "drop-jump-both-1.csv": simulateDropJump({ ...drop, dropHeightEffectiveMetres: effective }),
  });

  test("is held against the effective drop height: more than 20 % off is said", () => {
    const far = analysed(files(0.78 * box), { dropHeightMetres: box });
    const near = analysed(files(0.83 * box), { dropHeightMetres: box });
    expect(codes(far.trial("drop-jump-both-1.csv"))).toContain("drop-height-off");
    expect(codes(near.trial("drop-jump-both-1.csv"))).not.toContain("drop-height-off");
  });

  test("is asked for where nobody stated it", () => {
    const unstated = analysed(files(0.27)).trial("drop-jump-both-1.csv");
    expect(codes(unstated)).toContain("drop-height-not-stated");
    expect(unstated.dropHeightMetres).toBeUndefined();
  });

  test("and the leading leg are taken from the option, else the file's entry, else the session", () => {
    const session = { dropHeightMetres: 0.4, leadingLeg: "left" } as const;
    const file = { file: "drop-jump-both-1.csv", dropHeightMetres: 0.3, leadingLeg: "right" } as const;
    const said = (description: SessionDescription, stated: StatedOptions = {}) => {
      const { dropHeightMetres, leadingLeg } = analysed(files(0.27), description, stated).trial("drop-jump-both-1.csv");
      return [dropHeightMetres, leadingLeg];
    };
    expect(said(session)).toEqual([0.4, "left"]);
    expect(said({ ...session, files: [file] })).toEqual([0.3, "right"]);
    expect(said({ ...session, files: [file] }, { dropHeightMetres: 0.2, leadingLeg: "left" })).toEqual([0.2, "left"]);
  });
});

describe("single-leg drop jumps of both legs", () => {
  const pair = (right: number) => ({
    "drop-jump-left-1.csv": simulateDropJump({ ...single, limb: "left", dropHeightEffectiveMetres: 0.2 }),
    "drop-jump-right-1.csv": simulateDropJump({ ...single, limb: "right", dropHeightEffectiveMetres: right }),
  });
  test("from heights more than 10 % apart are said not to compare", () => {
    const apart = analysed(pair(0.175)).result.findings.map((each) => each.code);
    const alike = analysed(pair(0.185)).result.findings.map((each) => each.code);
    expect(apart).toContain("drop-height-legs-differ");
    expect(alike).not.toContain("drop-height-legs-differ");
  });
});

describe("a drop jump without standing after it", () => {
  const short = simulateDropJump({ ...drop, endsAfterTouchdownSeconds: 0.4 });
  test("is weighed by another trial of the session, and that is said", () => {
    const { trial } = analysed({ "drop-jump-both-1.csv": simulateDropJump(drop), "drop-jump-both-2.csv": short });
    expect(trial("drop-jump-both-2.csv").weight?.from).toBe("other trials on the same plates");
    // The other trial's quiet standing, noise-free: agreement is that of the table's four decimals.
    expect(Math.abs(measured(trial("drop-jump-both-2.csv"), "bodyMass") - 70)).toBeLessThan(1e-4);
  });
  test("is weighed by all other trials, and their number is said", () => {
    const { trial } = analysed({
      "drop-jump-both-1.csv": simulateDropJump(drop),
      "drop-jump-both-2.csv": simulateDropJump({ ...drop, seed: 10 }),
      "drop-jump-both-3.csv": short,
    });
    expect(trial("drop-jump-both-3.csv").weight).toMatchObject({ from: "other trials on the same plates", trials: 2 });
  });
});

describe("events moved by hand", () => {
  test("name the contact they belong to: the first touchdown of a drop jump changes its contact alone", () => {
    const path = "drop-jump-both-1.csv";
    const files = { [path]: simulateDropJump(drop) };
    const plain = analysed(files).trial(path);
    const own = plain.events.find((each) => each.name === "touchdown" && each.contactIndex === 1 && !isOfLimb(each))!;
    const moved = analysed(files, {
      files: [{ file: path, events: [{ name: "touchdown", contactIndex: 1, time: own.time + 0.01 }] }],
    }).trial(path);
    const shorter = measured(plain, "contactTime") - measured(moved, "contactTime");
    expect(Math.abs(shorter - 0.01)).toBeLessThanOrEqual(keptSeconds);
    expect(measured(moved, "flightTime")).toBe(measured(plain, "flightTime"));
    const published = moved.events.filter((each) => each.name === "touchdown" && !isOfLimb(each));
    expect(published.map((each) => [each.contactIndex, each.from])).toEqual([
      [1, "edited"],
      [2, "detected"],
    ]);
  });

  test("move one edge of one hop and the two numbers beside it", () => {
    const path = "hops-both-1.csv";
    const hops = Array.from({ length: 6 }, () => ({ contactSeconds: 0.2, jumpHeightMetres: 0.2 }));
    const files = { [path]: simulateHops({ ...drop, entryHeightMetres: 0.2, hops }) };
    const plain = analysed(files).trial(path);
    const own = plain.events.find((each) => each.name === "takeoff" && each.contactIndex === 3)!;
    const moved = analysed(files, {
      files: [{ file: path, events: [{ name: "takeoff", contactIndex: 3, time: own.time - 0.01 }] }],
    }).trial(path);
    for (const [index, hop] of moved.hops!.entries()) {
      const before = plain.hops![index]!;
      const shift = hop.contactIndex === 3 ? 0.01 : 0;
      expect(Math.abs(before.contactTime - hop.contactTime - shift)).toBeLessThanOrEqual(keptSeconds);
      expect(Math.abs(hop.flightTime - before.flightTime - shift)).toBeLessThanOrEqual(keptSeconds);
    }
  });
});
