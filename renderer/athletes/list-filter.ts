import type { AthleteFilter } from "../../electron/register/register-views.ts";
import { monthsBefore } from "../shell/dates.ts";
import { words } from "../words/words.ts";

const prose = words.screens.athletesList;

/** The list's filter as it is chosen; "" leaves a part open. */
export interface ChosenFilter {
  readonly text: string;
  readonly involved: string;
  /** Time since the operation, one of `operationSpans`. */
  readonly operated: string;
  readonly milestone: string;
  /** Time since the last session, one of `sessionSpans`. */
  readonly lastSession: string;
}

export const openFilter: ChosenFilter = { text: "", involved: "", operated: "", milestone: "", lastSession: "" };

interface Span {
  readonly value: string;
  readonly label: string;
  /** Months ago, from the nearer to the farther end; open where absent. */
  readonly atLeast?: number;
  readonly atMost?: number;
}

export const operationSpans: readonly Span[] = [
  { value: "0-4", label: prose.upTo4Months, atMost: 4 },
  { value: "4-7", label: prose.from4To7Months, atLeast: 4, atMost: 7 },
  { value: "7-9", label: prose.from7To9Months, atLeast: 7, atMost: 9 },
  { value: "9-12", label: prose.from9To12Months, atLeast: 9, atMost: 12 },
  { value: "12+", label: prose.moreThan12Months, atLeast: 12 },
];

export const sessionSpans: readonly Span[] = [
  { value: "0-1", label: prose.withinMonth, atMost: 1 },
  { value: "0-3", label: prose.withinThreeMonths, atMost: 3 },
  { value: "3+", label: prose.moreThanThreeMonthsAgo, atLeast: 3 },
];

const involvedSides = ["left", "right", "both", "none"] as const;

/** What the register is asked for. */
export function filterFrom(chosen: ChosenFilter, today: string): AthleteFilter {
  const involved = involvedSides.find((side) => side === chosen.involved);
  const text = chosen.text.trim();
  const milestone = chosen.milestone.trim();
  const operated = datesOf(operationSpans, chosen.operated, today);
  const last = datesOf(sessionSpans, chosen.lastSession, today);
  return {
    ...(text !== "" && { text }),
    ...(involved !== undefined && { involved }),
    ...(milestone !== "" && { milestone }),
    ...(operated.from !== undefined && { operatedFrom: operated.from }),
    ...(operated.to !== undefined && { operatedTo: operated.to }),
    ...(last.from !== undefined && { lastSessionFrom: last.from }),
    ...(last.to !== undefined && { lastSessionTo: last.to }),
  };
}

/** True where anything but the text narrows the list. */
export function isNarrowed({ text: _text, ...others }: ChosenFilter): boolean {
  return Object.values(others).some((value) => value !== "");
}

function datesOf(
  spans: readonly Span[],
  chosen: string,
  today: string,
): { readonly from?: string; readonly to?: string } {
  const span = spans.find(({ value }) => value === chosen);
  return {
    ...(span?.atMost !== undefined && { from: monthsBefore(today, span.atMost) }),
    ...(span?.atLeast !== undefined && { to: monthsBefore(today, span.atLeast) }),
  };
}
