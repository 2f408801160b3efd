import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import { hasShared, sharedFolder } from "../worked/worked-example.ts";
import { plainWorkedExample } from "./oracle-trial.ts";
import { plainCountermovementJump } from "./plain-countermovement.ts";
import { plainDropJump } from "./plain-drop.ts";

/** The examples are printed to seven digits: half a unit of the seventh, relative; times to 1e-6 s. */
const printedRelative = 5e-7;
const printedSeconds = 1e-6;

interface Example {
  readonly file: string;
  readonly events: Readonly<Record<string, number>>;
  readonly measures: readonly { readonly id: string; readonly side: string; readonly value: number }[];
}

const examples = [
  ["countermovement-two-legs.csv", plainCountermovementJump],
  ["drop-two-legs.csv", plainDropJump],
] as const;

describe.skipIf(!hasShared("worked-examples"))("the oracle against the worked examples", () => {
  test.each(examples)("%s: every printed event and value is met to the seventh digit", (file, analyse) => {
    const expected: { trials: Example[] } = JSON.parse(
      readFileSync(join(sharedFolder, "worked-examples/expected.json"), "utf8"),
    );
    const example = expected.trials.find((each) => each.file === file)!;
    const { events, measures } = analyse(plainWorkedExample(file), defaultSettings);
    for (const [label, seconds] of Object.entries(example.events)) {
      const [name, contact] = label.split(", contactIndex ");
      const event = events.find(
        (each) =>
          each.name === name &&
          each.side === undefined &&
          (contact === undefined || each.contactIndex === Number(contact)),
      );
      expect(Math.abs(event!.time - seconds), label).toBeLessThanOrEqual(printedSeconds);
    }
    for (const { id, side, value } of example.measures) {
      const measure = measures.find((each) => each.id === id && each.side === side);
      expect(Math.abs(measure!.value / value - 1), `${id} ${side}`).toBeLessThanOrEqual(printedRelative);
    }
  });
});
