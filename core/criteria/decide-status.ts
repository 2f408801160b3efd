import { formatPercent, percentDigits } from "../format-number.ts";
import type { CriterionResult } from "./criterion.ts";
import { reaches } from "./reaches.ts";

interface Limits {
  readonly low: number;
  readonly high: number;
}

/** Whole interval at or above the threshold: met; wholly below: not met; else undecided (METHODS §8). */
export function statusOf(limits: Limits, atLeastPercent: number): "met" | "not-met" | "too-close-to-call" {
  if (reaches(limits.low, atLeastPercent)) return "met";
  return reaches(limits.high, atLeastPercent) ? "too-close-to-call" : "not-met";
}

/**
 * The status of an estimate in per cent with its interval against a threshold, and the sentence that says why.
 * `noun` names what was held against it ("index", "value of the right leg"); `without` says why there is no interval.
 */
export function decideStatus(
  noun: string,
  estimate: number,
  interval: (Limits & { readonly confidence: number }) | undefined,
  without: string,
  atLeastPercent: number,
  marks: readonly number[],
): Pick<CriterionResult, "status" | "estimate" | "lean" | "interval" | "reason"> {
  const shown = formatPercent(estimate, marks);
  const threshold = `${atLeastPercent}\u00a0%`;
  const lean = reaches(estimate, atLeastPercent) ? "met" : "not-met";
  if (interval === undefined) {
    return {
      status: "too-close-to-call",
      estimate,
      lean,
      reason: `The ${noun} is ${shown} against ${threshold}, and nothing bounds it. ${without}`,
    };
  }
  const range = `${percentDigits(interval.low, marks)} to ${formatPercent(interval.high, marks)}`;
  const confidence = `${Number((100 * interval.confidence).toFixed(1))}\u00a0%`;
  const status = statusOf(interval, atLeastPercent);
  if (status === "too-close-to-call") {
    const reason = `The ${noun} is ${shown}; its ${confidence} interval, ${range}, includes ${threshold}.`;
    return { status, estimate, lean, interval, reason };
  }
  const where = status === "met" ? "at or above" : "below";
  const reason = `The ${noun} is ${shown}; its whole ${confidence} interval, ${range}, is ${where} ${threshold}.`;
  return { status, estimate, interval, reason };
}
