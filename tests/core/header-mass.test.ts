import { expect, test } from "vitest";
import { told } from "../told.ts";
import { analyzeBytes } from "../worked/worked-example.ts";
import { seed } from "./findings/pair.ts";
import { jumpOf, saidJump, written } from "./simulate/faulty/faulty-trial.ts";

const simulatedKg = 70;

/** What is said of a simulated jump of 70 kg whose file says another mass above its columns. */
function saidOfWeight(header: string, massKg?: number): readonly string[] {
  const { text, said } = written(jumpOf(seed, { massKg: simulatedKg }), saidJump);
  const bytes = { "jump.csv": new TextEncoder().encode(`${header}\n${text}`) };
  const description = { files: [{ file: "jump.csv", ...said }], ...(massKg !== undefined && { massKg }) };
  const { result } = analyzeBytes(bytes, {}, description);
  return result.trials.flatMap(({ findings }) =>
    findings
      .filter(({ code }) => code === "weight-differs")
      .map((each) => told(each))
      .map(({ message }) => message),
  );
}

// 2 kg is the settings' tolerance for a mass that was entered.
test("A mass in the header is held against the plate's: 3 kg apart is said with its line, 1 kg is not", () => {
  const [said, ...more] = saidOfWeight("Body mass: 73 kg");
  expect(more).toEqual([]);
  expect(said).toMatch(/^This trial weighs the athlete at (69\.9|70\.0|70\.1) kg; the header says 73\.0 kg/);
  expect(said).toContain("(line 1: Body mass: 73 kg)");
  expect(saidOfWeight("Body mass: 71 kg")).toEqual([]);
});

test("A mass without a unit in the header says nothing", () => {
  expect(saidOfWeight("Body mass: 73")).toEqual([]);
});

test("A header's mass that differs is said beside an entered one that agrees", () => {
  expect(saidOfWeight("Body mass: 73 kg", 70)).toHaveLength(1);
});
