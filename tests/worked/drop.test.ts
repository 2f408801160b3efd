import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { analyzeBytes, hasShared, sharedBytes, sharedFolder, statedFeet } from "./worked-example.ts";

/** Agreement with the worked example, relative (its README); event times absolute, seconds. */
const relativeTolerance = 1e-6;
const timeTolerance = 1e-6;
/** The example states the box height of the recording, and its velocity to seven digits. */
const boxMetres = 0.3;
const touchdownVelocity = -2.309722;

interface Expected {
  readonly trials: readonly {
    readonly file: string;
    readonly events: Readonly<Record<string, number>>;
    readonly measures: readonly { id: string; side: string; value: number; unit: string }[];
  }[];
}

describe("the drop jump worked by exact integration", () => {
  if (!hasShared("worked-examples")) {
    test("is not at hand: the worked examples do not lie beside the project", () => {
      expect(hasShared("worked-examples")).toBe(false);
    });
    return;
  }
  const expected: Expected = JSON.parse(readFileSync(join(sharedFolder, "worked-examples/expected.json"), "utf8"));
  const example = expected.trials.find((trial) => trial.file === "drop-two-legs.csv")!;
  const { result } = analyzeBytes(
    { [example.file]: sharedBytes(`worked-examples/${example.file}`) },
    { test: "dropJump", limb: "both", dropHeightMetres: boxMetres, leadingLeg: "left" },
    statedFeet,
  );
  const trial = result.trials[0]!;
  const value = (id: string) => trial.measures.find((each) => each.id === id && each.side === "both")!.value;

  test("is one trial, analysed, weighed after the landing", () => {
    expect(result.trials).toHaveLength(1);
    expect(trial.status).toBe("analysed");
    expect(trial.weight?.from).toBe("quiet standing after the landing");
    expect(trial.findings.map((each) => each.code)).toEqual([]);
  });

  test.each(Object.entries(example.events))("has its %s at %f s", (label, seconds) => {
    const [name, index] = label.split(", contactIndex ");
    const event = trial.events.find(
      (each) =>
        each.name === name &&
        each.side === undefined &&
        each.contactIndex === (index === undefined ? undefined : Number(index)),
    );
    expect(Math.abs(event!.time - seconds)).toBeLessThanOrEqual(timeTolerance);
  });

  test.each(example.measures.map((each) => [each.id, each.side, each.value, each.unit] as const))(
    "%s, %s, is %f %s",
    (id, side, expectedValue, unit) => {
      const measure = trial.measures.find((each) => each.id === id && each.side === side);
      expect(measure?.unit).toBe(unit);
      expect(Math.abs(measure!.value / expectedValue - 1)).toBeLessThanOrEqual(relativeTolerance);
    },
  );

  test("has an effective drop height by flight time that follows by hand from impulse and flight", () => {
    // v_touchdown = g·0.47/2 − (net impulse of the contact)/m, the net impulse being m·(v_takeoff − v_touchdown).
    const g = 9.80665;
    const change = value("takeoffVelocity") - touchdownVelocity;
    const byFlight = (g * 0.47) / 2 - change;
    const expectedHeight = byFlight ** 2 / (2 * g);
    expect(Math.abs(value("dropHeightByFlightTime") / expectedHeight - 1)).toBeLessThanOrEqual(relativeTolerance);
    const difference = value("dropHeightEffective") - value("dropHeightByFlightTime");
    expect(value("dropHeightDifference")).toBeCloseTo(difference, 12);
  });
});
