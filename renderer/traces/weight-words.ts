import { formatValue, joinNumberText } from "../../core/ground/format-number.ts";
import { keepUnits, sentences } from "../../core/ground/plain-words.ts";
import { startsFromStanding, testFacts } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";

type WeightSource = NonNullable<TrialResult["weight"]>["from"];

function sourceWords(from: WeightSource): string {
  return from === "entered mass" ? "from the entered mass" : `from ${from}`;
}

/** Where the body weight comes from, and where velocity ends up by the standing before the jump alone. */
export function weightWords({ weight, endMismatch, test }: TrialResult): string {
  if (weight === undefined) return "";
  const other =
    weight.other === undefined
      ? ""
      : ` (${sourceWords(weight.other.from)}: ${joinNumberText(formatValue(weight.other.newtons, weight.other.uncertainty, "N"))})`;
  const mismatch =
    endMismatch === undefined
      ? ""
      : `By the standing before the jump alone, velocity in the standing after it ends at ${joinNumberText(formatValue(endMismatch.velocity, undefined, "m/s"))}, position at ${joinNumberText(formatValue(endMismatch.position, undefined, "m"))}${test !== undefined && testFacts(test).start === "hold" ? " above the hold" : ""}.`;
  return keepUnits(sentences(`Body weight ${sourceWords(weight.from)}${other}.`, mismatch));
}

/** Body weight as a chart writes it. */
export function weightText({ newtons, uncertainty }: NonNullable<TrialResult["weight"]>): string {
  return joinNumberText(formatValue(newtons, uncertainty, "N"));
}

/** True where the curves cross the line of body weight too soon for words on it, so that the legend names it. */
export function legendNamesWeight({ test }: TrialResult): boolean {
  return test !== undefined && !startsFromStanding(test);
}
