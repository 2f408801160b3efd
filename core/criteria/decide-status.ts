import type { Threshold } from "../ground/threshold.ts";
import type { CriterionResult } from "./criterion.ts";
import { reaches } from "./reaches.ts";

interface Limits {
  readonly low: number;
  readonly high: number;
}

/** Whole interval at or above the threshold: met; wholly below: not met; else undecided (METHODS §8). */
export function statusOf(limits: Limits, atLeast: number): "met" | "not-met" | "too-close-to-call" {
  if (reaches(limits.low, atLeast)) return "met";
  return reaches(limits.high, atLeast) ? "too-close-to-call" : "not-met";
}

/** What became of one estimate. */
export interface Decision {
  readonly status: ReturnType<typeof statusOf>;
  readonly estimate: number;
  readonly lean?: NonNullable<CriterionResult["lean"]>;
  readonly interval?: NonNullable<CriterionResult["interval"]>;
  readonly reason: string;
}

/**
 * The status of an estimate with its interval against a threshold, and the sentence that says why. Estimate and
 * interval are in the unit of the threshold. `noun` names what was held against it ("index", "value of the right
 * leg as a part of the left leg's pre-injury value"); `without` says why there is no interval.
 */
export function decideStatus(
  noun: string,
  estimate: number,
  interval: (Limits & { readonly confidence: number }) | undefined,
  without: string,
  threshold: Threshold,
): Decision {
  const { atLeast } = threshold;
  const shown = threshold.show(estimate);
  const lean = reaches(estimate, atLeast) ? "met" : "not-met";
  if (interval === undefined) {
    return {
      status: "too-close-to-call",
      estimate,
      lean,
      reason: `The ${noun} is ${shown} against ${threshold.text}, and nothing bounds it. ${without}`,
    };
  }
  const range = `${threshold.digits(interval.low)} to ${threshold.show(interval.high)}`;
  const confidence = `${Number((100 * interval.confidence).toFixed(1))}\u00a0%`;
  const status = statusOf(interval, atLeast);
  if (status === "too-close-to-call") {
    const reason = `The ${noun} is ${shown}; its ${confidence} interval, ${range}, includes ${threshold.text}.`;
    return { status, estimate, lean, interval, reason };
  }
  const where = status === "met" ? "at or above" : "below";
  const reason = `The ${noun} is ${shown}; its whole ${confidence} interval, ${range}, is ${where} ${threshold.text}.`;
  return { status, estimate, interval, reason };
}
