import { formatValue, joinNumberText } from "../../core/ground/format-number.ts";
import { keepUnits, sentences } from "../../core/ground/plain-words.ts";
import { startsFromStanding, testFacts } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traces;

type WeightSource = NonNullable<TrialResult["weight"]>["from"];

function sourceWords(from: WeightSource): string {
  return from === "entered mass" ? prose.fromEnteredMass : prose.from(from);
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
      : prose.endMismatch(
          joinNumberText(formatValue(endMismatch.velocity, undefined, "m/s")),
          joinNumberText(formatValue(endMismatch.position, undefined, "m")),
          test !== undefined && testFacts(test).start === "hold" ? prose.aboveHold : "",
        );
  return keepUnits(sentences(prose.bodyWeightFrom(sourceWords(weight.from), other), mismatch));
}

/** Body weight as a chart writes it. */
export function weightText({ newtons, uncertainty }: NonNullable<TrialResult["weight"]>): string {
  return joinNumberText(formatValue(newtons, uncertainty, "N"));
}

/** True where the curves cross the line of body weight too soon for words on it, so that the legend names it. */
export function legendNamesWeight({ test }: TrialResult): boolean {
  return test !== undefined && !startsFromStanding(test);
}
