import type { TrialResult } from "../result/trial-result.ts";

/**
 * Trials in the order in which their files count, so that jump-10 comes after jump-2: numbers in a name are read as
 * numbers, the rest by its characters. Recordings carry no clock that could be trusted, and this is how they are named.
 */
export function inRecordedOrder(trials: readonly TrialResult[]): readonly TrialResult[] {
  return trials.toSorted((one, other) => comparedNames(one.file, other.file) || one.trial - other.trial);
}

function comparedNames(one: string, other: string): number {
  const [parts, others] = [partsOf(one), partsOf(other)];
  for (let at = 0; at < Math.min(parts.length, others.length); at += 1) {
    const order = comparedParts(parts[at] ?? "", others[at] ?? "");
    if (order !== 0) return order;
  }
  return parts.length - others.length || comparedText(one, other);
}

function partsOf(name: string): readonly string[] {
  return name.match(/\d+|\D+/g) ?? [];
}

function comparedParts(one: string, other: string): number {
  const numbers = /^\d/.test(one) && /^\d/.test(other);
  return numbers && Number(one) !== Number(other)
    ? Number(one) - Number(other)
    : numbers
      ? 0
      : comparedText(one, other);
}

function comparedText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
