import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { HeaderHint } from "./header-hint.ts";

/** A rate somebody or the file's header states, and where. */
export interface StatedRate {
  readonly rateHz: number;
  readonly from: "stated" | "header";
  /** "stated", "by the layout "Lab A"", "line 3: Sampling rate: 1000 Hz". */
  readonly source: string;
}

/** Every rate that is stated: the person's (or the layout's) first, then those of the header in order of lines. */
export function statedRates(
  answer: { readonly rateHz?: number; readonly layout?: { readonly name: string } },
  hints: readonly HeaderHint[],
): readonly StatedRate[] {
  const { rateHz, layout } = answer;
  const source = layout === undefined ? "stated" : `by the layout "${layout.name}"`;
  const own: readonly StatedRate[] = rateHz === undefined ? [] : [{ rateHz, from: "stated", source }];
  const header = hints.flatMap((hint): readonly StatedRate[] =>
    hint.kind === "rate" && typeof hint.value === "number"
      ? [{ rateHz: hint.value, from: "header", source: hintSource(hint) }]
      : [],
  );
  return [...own, ...header];
}

/** "line 3: Sampling rate: 1000 Hz". */
export function hintSource({ line, written }: HeaderHint): string {
  return `line ${line}: ${written.length > 80 ? `${written.slice(0, 80)}…` : written}`;
}

/** True where two rates are one as far as the settings allow. */
export function agree(one: number, other: number, settings: Settings): boolean {
  return Math.abs(one - other) <= settings.timeUnevenFraction * other;
}

/** What a header says of the rate against the rate that is used; `usedFrom` completes "… comes from". */
export function headerRateFindings(
  used: { readonly rateHz: number; readonly from: "time column" | "stated" | "header"; readonly toleranceHz: number },
  rates: readonly StatedRate[],
  settings: Settings,
): readonly Finding[] {
  const header = rates.filter((rate) => rate.from === "header");
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
  rate: StatedRate,
  used: { readonly rateHz: number; readonly from: "time column" | "stated" | "header" },
  isRefused: boolean,
): Finding {
  const other =
    used.from === "time column"
      ? `the time column gives ${hertz(used.rateHz)}`
      : used.from === "stated"
        ? `${hertz(used.rateHz)} was stated`
        : `another line says ${hertz(used.rateHz)}`;
  const where = rate.source.split(":")[0]!;
  const message = `The header says ${hertz(rate.rateHz)} (${rate.source}), but ${other}`;
  const options =
    used.from === "time column"
      ? `--rate ${plainHertz(used.rateHz)} keeps the time column; --rate ${plainHertz(rate.rateHz)} with --columns time=none keeps the header`
      : `--rate ${plainHertz(used.rateHz)} or --rate ${plainHertz(rate.rateHz)}`;
  return isRefused
    ? proseFinding("rate-contradicts", "refusal", `${message}.`, `State which rate is right (${options}).`, { where })
    : proseFinding("rate-contradicts", "warning", `${message}, which was used.`, "Check the rate at the source.", {
        where,
      });
}

/** A header line that speaks of the rate without saying it in full is named in the question. */
export function unitlessRate(hints: readonly HeaderHint[]): string {
  const hint = hints.find((each) => each.kind === "rate" && each.value === undefined);
  if (hint === undefined) return "";
  const { numberWithoutUnit } = hint;
  if (numberWithoutUnit === undefined) return ` The header's rate has two readings (${hintSource(hint)}).`;
  return ` The header gives ${numberWithoutUnit} without a unit (${hintSource(hint)}).`;
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
      proseFinding(
        "rate-contradicts",
        "warning",
        `The header gives a rate of ${number} without a unit (${hintSource(hint)}), but ${hertz(rateHz)} was used.`,
        "Check the rate at the source.",
        { where: `line ${hint.line}` },
      ),
    ];
  });
}

export function hertz(rateHz: number): string {
  return `${plainHertz(rateHz)} Hz`;
}

function plainHertz(rateHz: number): number {
  return Number(rateHz.toPrecision(7));
}
