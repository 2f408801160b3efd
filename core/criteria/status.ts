import type { CriterionResult, Status } from "./criterion.ts";
import { thresholdOf } from "./threshold.ts";

const labels: Readonly<Record<Status, string>> = {
  met: "met",
  "not-met": "not met",
  "too-close-to-call": "too close to call",
  "not-measured": "not measured",
  "not-applicable": "not applicable",
  "no-reference": "no reference",
  "out-of-date": "out of date",
  "withheld-today": "withheld today",
};

/** The word of a status, as it stands on screens and sheets. */
export function statusLabel(status: Status): string {
  return labels[status];
}

/** The status of a criterion with everything that must stand beside it: "too close to call (91 %, leaning met)". */
export function statusWords(result: CriterionResult): string {
  const word = statusLabel(result.status);
  const lean =
    result.lean === undefined || result.estimate === undefined
      ? ""
      : ` (${thresholdOf(result.criterion).show(result.estimate)}, leaning ${statusLabel(result.lean)})`;
  const qualifier = result.qualifier === undefined ? "" : ` (${result.qualifier})`;
  return `${word}${lean}${qualifier}`;
}
