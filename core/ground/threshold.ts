import { formatPercent, formatValue, percentDigits } from "./format-number.ts";
import { displayUnit, type UcumUnit } from "./units.ts";

/** What a criterion asks for: a value in the unit of its measure, or a part of another value in per cent. */
export type AskedFor =
  | { readonly kind: "absolute"; readonly atLeast: number; readonly unit: UcumUnit }
  | { readonly kind: "symmetry" | "against-reference"; readonly atLeastPercent: number };

/** What an estimate is held against, and how figures beside it are written so that none reads across it. */
export interface Threshold {
  readonly atLeast: number;
  /** The threshold itself: "90 %", "1.3 m/s". */
  readonly text: string;
  /** A figure with its unit. */
  readonly show: (value: number) => string;
  /** The same without the unit, for the lower end of an interval. */
  readonly digits: (value: number) => string;
}

/** A threshold in per cent. `marks` are further figures that no value may be rounded onto or across. */
export function percentThreshold(atLeastPercent: number, marks: readonly number[] = []): Threshold {
  const all = [atLeastPercent, ...marks];
  return {
    atLeast: atLeastPercent,
    text: `${atLeastPercent}\u00a0%`,
    show: (value) => formatPercent(value, all),
    digits: (value) => percentDigits(value, all),
  };
}

/** A threshold in the unit of a measure. */
export function valueThreshold(atLeast: number, unit: UcumUnit): Threshold {
  const { symbol, factor } = displayUnit(unit);
  const withUnit = (text: string) => (symbol === "" ? text : `${text}\u00a0${symbol}`);
  const digits = (value: number) => formatValue(value, undefined, unit, [atLeast]).value;
  return {
    atLeast,
    text: withUnit(String(Number((atLeast * factor).toPrecision(12)))),
    show: (value) => withUnit(digits(value)),
    digits,
  };
}

/** The threshold of a criterion, whatever its kind. */
export function thresholdOf(criterion: AskedFor): Threshold {
  return criterion.kind === "absolute"
    ? valueThreshold(criterion.atLeast, criterion.unit)
    : percentThreshold(criterion.atLeastPercent);
}

/** The threshold in per cent of an index; undefined for criteria that ask for a value. */
export function percentOf(criterion: AskedFor): number | undefined {
  return criterion.kind === "absolute" ? undefined : criterion.atLeastPercent;
}
