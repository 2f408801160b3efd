import { displayUnit, type UcumUnit } from "./units.ts";

/** What stands where there is no value. */
export const noValue = "–";

/** A number as a screen shows it: the value, its standard uncertainty and the unit's symbol, each on its own. */
export interface NumberText {
  /** An en dash where there is no value. */
  readonly value: string;
  /** Without the sign ±; empty where no uncertainty is known. */
  readonly uncertainty: string;
  /** Empty for pure numbers. */
  readonly symbol: string;
}

/**
 * The finest decimals on the sheet, in the unit of the screen, and those shown anywhere where no uncertainty is known:
 * about a tenth of what a repeated trial varies by, so that rounding never shows and no digit pretends to be of use.
 */
const finestSheetDecimals: Readonly<Record<UcumUnit, number>> = {
  N: 0,
  kg: 1,
  "m/s": 2,
  m: 1,
  s: 3,
  "N.s": 1,
  W: 0,
  "N/s": 0,
  "N/m": 0,
  "N/kg": 1,
  "W/kg": 1,
  "N.s/kg": 2,
  "1": 2,
  "{count}": 0,
};

/** More decimals than this are never shown, however small the uncertainty. */
const mostDecimals = 6;

/**
 * A number with as many digits as its uncertainty justifies. The uncertainty keeps one significant digit, two when the
 * first is a 1 (one digit would then round it by up to half); the value is rounded to the same place. Both are given in
 * the unit of the screen (lengths in centimetres), with a true minus.
 * @param value in `unit`; undefined for none
 * @param uncertainty standard uncertainty (k = 1) in `unit`; undefined or 0 where none is known
 * @param thresholds in `unit`; decimals are added as long as rounding would put the value on one or across it
 */
export function formatValue(
  value: number | undefined,
  uncertainty: number | undefined,
  unit: UcumUnit,
  thresholds: readonly number[] = [],
): NumberText {
  return numberText(value, uncertainty, unit, thresholds, mostDecimals);
}

/**
 * The same for a table of the sheet, never finer than its finest decimals: more would be true of one attempt and of no
 * use to whoever reads several. An uncertainty below half of that place reads "<" and one step of it.
 */
export function formatSheetValue(
  value: number | undefined,
  uncertainty: number | undefined,
  unit: UcumUnit,
  thresholds: readonly number[] = [],
): NumberText {
  return numberText(value, uncertainty, unit, thresholds, finestSheetDecimals[unit]);
}

function numberText(
  value: number | undefined,
  uncertainty: number | undefined,
  unit: UcumUnit,
  thresholds: readonly number[],
  finest: number,
): NumberText {
  const { symbol, factor } = displayUnit(unit);
  if (value === undefined || !Number.isFinite(value)) return { value: noValue, uncertainty: "", symbol };
  const known = uncertainty !== undefined && Number.isFinite(uncertainty) && uncertainty > 0;
  const least = known ? Math.min(justifiedDecimals(uncertainty * factor), finest) : finestSheetDecimals[unit];
  const decimals = decimalsBeside(
    value * factor,
    least,
    thresholds.map((each) => each * factor),
  );
  const text = roundTo(value * factor, decimals);
  if (!known) return { value: text, uncertainty: "", symbol };
  const rounded = roundTo(uncertainty * factor, decimals);
  const below = !/[1-9]/.test(rounded);
  return { value: text, uncertainty: below ? `<${roundTo(10 ** -decimals, decimals)}` : rounded, symbol };
}

/** The parts of `formatValue` on one line: "26.6 ± 0.2 cm". */
export function joinNumberText({ value, uncertainty, symbol }: NumberText): string {
  const plusMinus = uncertainty === "" ? "" : ` ± ${uncertainty}`;
  return `${value}${plusMinus}${symbol === "" || value === noValue ? "" : `\u00a0${symbol}`}`;
}

/**
 * A per cent value in whole per cent: "91 %". Where thresholds are given, decimals are added as long as rounding would
 * put the value on a threshold or across it, so that 89.6 is never shown as 90 beside a threshold of 90.
 */
export function formatPercent(percent: number | undefined, thresholds: readonly number[] = []): string {
  return percent === undefined || !Number.isFinite(percent) ? noValue : `${percentDigits(percent, thresholds)}\u00a0%`;
}

/** The digits of `formatPercent` without the sign, for intervals and columns that say per cent once. */
export function percentDigits(percent: number, thresholds: readonly number[] = []): string {
  return roundTo(percent, decimalsBeside(percent, 0, thresholds));
}

/** Rounds to a number of decimals (negative: tens, hundreds) and writes a true minus; zero carries no sign. */
export function roundTo(value: number, decimals: number): string {
  const step = 10 ** -decimals;
  const digits = decimals < 0 ? String(Math.round(value / step) * step) : value.toFixed(decimals);
  return /[1-9]/.test(digits) ? digits.replace("-", "\u2212") : digits.replace("-", "");
}

/** The fewest decimals, from `least` on, at which rounding puts the value neither on a threshold nor across it. */
function decimalsBeside(value: number, least: number, thresholds: readonly number[]): number {
  let decimals = least;
  while (decimals < mostDecimals && !thresholds.every((each) => keepsSide(value, decimals, each))) decimals += 1;
  return decimals;
}

function keepsSide(value: number, decimals: number, threshold: number): boolean {
  const step = 10 ** -decimals;
  const rounded = decimals < 0 ? Math.round(value / step) * step : Number(value.toFixed(decimals));
  return sideOf(rounded, threshold) === sideOf(value, threshold);
}

/** Floating-point rounding does not put a value beside a threshold it is meant to be on. */
function sideOf(value: number, threshold: number): number {
  return Math.abs(value - threshold) <= 1e-9 * Math.abs(threshold) ? 0 : Math.sign(value - threshold);
}

function justifiedDecimals(uncertainty: number): number {
  const [mantissa = "", exponent = ""] = uncertainty.toExponential(1).split("e");
  const decimals = -Number(exponent) + (mantissa.startsWith("1") ? 1 : 0);
  return Math.min(decimals, mostDecimals);
}
