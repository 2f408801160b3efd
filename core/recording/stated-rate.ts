import type { Answer } from "../ground/answer.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { StatementSource, UnitlessRate, WrittenLine } from "../ground/findings/file-parts.ts";
import type { Settings } from "../settings/settings.ts";
import type { HeaderHint } from "./header-hint.ts";
import { noColumn } from "./stated-columns.ts";
import { lineOf } from "./statement-source.ts";

/** A rate somebody or the file's header states, and where. */
export interface StatedRate {
  readonly rateHz: number;
  readonly source: StatementSource;
}

/** Every rate that is stated: the person's (or the layout's) first, then those of the header in order of lines. */
export function statedRates(
  answer: { readonly rateHz?: number; readonly layout?: { readonly name: string } },
  hints: readonly HeaderHint[],
): readonly StatedRate[] {
  const { rateHz, layout } = answer;
  const source: StatementSource = layout === undefined ? { from: "person" } : { from: "layout", name: layout.name };
  const own: readonly StatedRate[] = rateHz === undefined ? [] : [{ rateHz, source }];
  const header = hints.flatMap((hint): readonly StatedRate[] =>
    hint.kind === "rate" && typeof hint.value === "number"
      ? [{ rateHz: hint.value, source: { from: "line", ...lineOf(hint) } }]
      : [],
  );
  return [...own, ...header];
}

/** True where two rates are one as far as the settings allow. */
export function agree(one: number, other: number, settings: Settings): boolean {
  return Math.abs(one - other) <= settings.timeUnevenFraction * other;
}

/** What a header says of the rate against the rate that is used. */
export function headerRateFindings(
  used: { readonly rateHz: number; readonly from: "time column" | "stated" | "header"; readonly toleranceHz: number },
  rates: readonly StatedRate[],
  settings: Settings,
): readonly Finding[] {
  const header = rates.flatMap(({ rateHz, source }) => (source.from === "line" ? [{ rateHz, line: source }] : []));
  const bearsOut = rates.some((rate) => agree(rate.rateHz, used.rateHz, settings));
  return header
    .filter((rate) => Math.abs(rate.rateHz - used.rateHz) > Math.max(used.toleranceHz, 1e-6 * used.rateHz))
    .map((rate) => {
      // Two sources of the file against each other and nobody to decide: every time and height hangs on it.
      const isUndecided =
        !agree(rate.rateHz, used.rateHz, settings) &&
        (used.from === "header" || (used.from === "time column" && !bearsOut));
      return headerContradiction(rate, used, isUndecided);
    });
}

function headerContradiction(
  { rateHz, line: { line, written } }: { readonly rateHz: number; readonly line: WrittenLine },
  used: { readonly rateHz: number; readonly from: "time column" | "stated" | "header" },
  isRefused: boolean,
): Finding {
  const figures = { rateHz, line: { line, written }, usedHz: used.rateHz, usedFrom: used.from };
  const place = { at: "line", line } as const;
  if (!isRefused) return finding("rate-contradicts/header-not-used", "warning", figures, { place });
  return finding("rate-contradicts/header", "refusal", figures, {
    place,
    answers: [
      { rateHz: plainHertz(used.rateHz) },
      used.from === "time column" ? rateWithoutTime(rateHz) : { rateHz: plainHertz(rateHz) },
    ],
  });
}

/** A rate that counts in place of the time column. */
export function rateWithoutTime(rateHz: number): Answer {
  return { rateHz: plainHertz(rateHz), columns: { time: noColumn } };
}

/** The header line that speaks of the rate without saying it in full. */
export function unitlessRate(hints: readonly HeaderHint[]): UnitlessRate | undefined {
  const hint = hints.find((each) => each.kind === "rate" && each.value === undefined);
  if (hint === undefined) return undefined;
  const { numberWithoutUnit } = hint;
  return { ...lineOf(hint), ...(numberWithoutUnit === undefined ? {} : { number: numberWithoutUnit }) };
}

/** A number without a unit states no rate, but one that fits neither hertz nor kilohertz of the rate used is named. */
export function unitlessContradictions(
  hints: readonly HeaderHint[],
  rateHz: number | undefined,
  settings: Settings,
): readonly Finding[] {
  if (rateHz === undefined) return [];
  return hints.flatMap((hint) => {
    const number = hint.kind === "rate" ? hint.numberWithoutUnit : undefined;
    if (number === undefined || agree(number, rateHz, settings) || agree(1000 * number, rateHz, settings)) return [];
    return [
      finding(
        "rate-contradicts/unitless",
        "warning",
        { number, line: lineOf(hint), usedHz: rateHz },
        { place: { at: "line", line: hint.line } },
      ),
    ];
  });
}

/** A rate to seven digits, as it is said and stated. */
export function plainHertz(rateHz: number): number {
  return Number(rateHz.toPrecision(7));
}
