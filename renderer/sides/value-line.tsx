import type { CriterionResult } from "../../core/criteria/criterion.ts";
import { thresholdOf } from "../../core/ground/threshold.ts";
import { IntervalLine } from "../charts/interval-line.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.sides;

interface ValueLineProps {
  readonly result: CriterionResult;
  readonly colour: string;
}

/** The drawn range reaches at least this far below and above the threshold, as parts of it. */
const leastBelow = 0.6;
const leastAbove = 1.3;

/** A value held against a threshold in its own unit, on a line of its own; nothing where there is no value. */
export function ValueLine({ result, colour }: ValueLineProps) {
  const { estimate, interval, criterion } = result;
  if (estimate === undefined) return null;
  const { atLeast, text, show, digits } = thresholdOf(criterion);
  const between = interval === undefined ? "" : prose.interval(digits(interval.low), show(interval.high));
  return (
    <IntervalLine
      value={estimate}
      {...(interval === undefined ? {} : { thick: interval })}
      threshold={atLeast}
      axis={{
        low: Math.min(leastBelow * atLeast, estimate, interval?.low ?? estimate),
        high: Math.max(leastAbove * atLeast, estimate, interval?.high ?? estimate),
      }}
      colour={colour}
      description={prose.valueAndThreshold(show(estimate), between, text)}
      labels={[{ at: atLeast, text }]}
    />
  );
}
