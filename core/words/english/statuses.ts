import type { Status } from "../../ground/status.ts";
import { type AskedFor, thresholdOf } from "../../ground/threshold.ts";

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

/** A criterion as it stands, as far as its status is told. */
interface Standing {
  readonly criterion: AskedFor & { readonly label: string };
  readonly status: Status;
  readonly qualifier?: string;
  readonly estimate?: number;
  readonly lean?: "met" | "not-met";
}

/** The status of a criterion with everything that must stand beside it: "too close to call (91 %, leaning met)". */
function words({ criterion, status, qualifier, estimate, lean }: Standing): string {
  const leaning =
    lean === undefined || estimate === undefined
      ? ""
      : ` (${thresholdOf(criterion).show(estimate)}, leaning ${labels[lean]})`;
  return `${labels[status]}${leaning}${qualifier === undefined ? "" : ` (${qualifier})`}`;
}

/** What a decision did to the statuses, in one sentence: which criterion went from which words to which. */
function changes(changed: readonly { readonly before: Standing; readonly now: Standing }[]): string {
  if (changed.length === 0) return "It changes no status.";
  const each = changed.map(({ before, now }) => `${now.criterion.label}: ${words(before)} before, ${words(now)} now`);
  return `It changes a status. ${each.join(". ")}.`;
}

/** How statuses are told. */
export const statuses = {
  /** The word of a status, as it stands on screens and sheets. */
  label: (status: Status): string => labels[status],
  words,
  changes,
  /** "at least 90 %", "at least 1.3 m/s": what a criterion asks for. */
  threshold: (criterion: AskedFor): string => `at least ${thresholdOf(criterion).text}`,
};
