import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { analyzeBytes, hasShared, sharedBytes, sharedFolder, statedFeet } from "./worked-example.ts";

/** Agreement with the worked example, relative (its README); event times absolute, seconds. */
const relativeTolerance = 1e-6;
const timeTolerance = 1e-6;

interface Expected {
  readonly trials: readonly {
    readonly file: string;
    readonly events: Readonly<Record<string, number>>;
    readonly measures: readonly { id: string; side: string; value: number; unit: string }[];
  }[];
}

describe("the countermovement jump worked by exact integration", () => {
  if (!hasShared("worked-examples")) {
    test("is not at hand: the worked examples do not lie beside the project", () => {
      expect(hasShared("worked-examples")).toBe(false);
    });
    return;
  }
  const expected: Expected = JSON.parse(readFileSync(join(sharedFolder, "worked-examples/expected.json"), "utf8"));
  const example = expected.trials.find((trial) => trial.file === "countermovement-two-legs.csv")!;
  const { result } = analyzeBytes(
    { [example.file]: sharedBytes(`worked-examples/${example.file}`) },
    { test: "countermovementJump", limb: "both" },
    statedFeet,
  );
  const trial = result.trials[0]!;

  test("is analysed without a refusal", () => {
    expect(trial.status).toBe("analysed");
    expect(trial.findings.map((each) => each.code)).toEqual([]);
  });

  test.each(Object.entries(example.events))("has its %s at %f s", (name, seconds) => {
    const event = trial.events.find((each) => each.name === name && each.side === undefined);
    expect(Math.abs(event!.time - seconds)).toBeLessThanOrEqual(timeTolerance);
  });

  test.each(example.measures.map((each) => [each.id, each.side, each.value, each.unit] as const))(
    "%s, %s, is %f %s",
    (id, side, value, unit) => {
      const measure = trial.measures.find((each) => each.id === id && each.side === side);
      expect(measure?.unit).toBe(unit);
      expect(Math.abs(measure!.value / value - 1)).toBeLessThanOrEqual(relativeTolerance);
    },
  );
});
