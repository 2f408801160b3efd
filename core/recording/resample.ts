import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";

/** An even time base to put samples on. */
export interface EvenTarget {
  readonly toHz: number;
  /** Rate of the samples as they are; the mean one where they are uneven. */
  readonly fromHz: number;
  /** Where each sample lies, seconds; absent where they are even. */
  readonly seconds?: Float64Array;
}

/**
 * The time base that was asked for; undefined where nothing was, or where the samples lie on it already. Without a
 * wanted rate uneven samples go to the nearest whole rate, where that is within the tolerance of the rates.
 */
export function evenTarget(
  source: { readonly rateHz: number; readonly seconds?: Float64Array },
  wanted: { readonly resample?: boolean; readonly resampleHz?: number },
  settings: Settings,
): EvenTarget | undefined {
  const { rateHz, seconds } = source;
  if (wanted.resampleHz === undefined && (wanted.resample !== true || seconds === undefined)) return undefined;
  const whole = Math.round(rateHz);
  const isNear = Math.abs(whole - rateHz) <= settings.timeUnevenFraction * rateHz;
  const toHz = wanted.resampleHz ?? (isNear ? whole : rateHz);
  if (seconds === undefined && toHz === rateHz) return undefined;
  return { toHz, fromHz: rateHz, ...(seconds === undefined ? {} : { seconds }) };
}

/** Slack in samples, so that rounding of times does not cost the last sample. No setting: rounding of doubles. */
const endSlack = 1e-6;

/**
 * Values at even times from the first sample on, on straight lines between the samples. Gaps are refused before: no
 * line crosses one.
 */
export function resample(values: Float64Array, { toHz, fromHz, seconds }: EvenTarget): Float64Array {
  const last = values.length - 1;
  if (last < 1) return values.slice();
  const place = (index: number): number => (seconds === undefined ? index / fromHz : seconds[index]! - seconds[0]!);
  const even = new Float64Array(Math.floor(place(last) * toHz + endSlack) + 1);
  let index = 0;
  for (let sample = 0; sample < even.length; sample++) {
    const time = sample / toHz;
    while (index < last - 1 && place(index + 1) <= time) index++;
    const start = place(index);
    const part = Math.min(1, Math.max(0, (time - start) / (place(index + 1) - start)));
    even[sample] = values[index]! + part * (values[index + 1]! - values[index]!);
  }
  return even;
}

/** Says that samples were put on another time base. */
export function resampled({ toHz, fromHz, seconds }: EvenTarget): Finding {
  return finding("resampled", "note", { fromHz, toHz, wereUneven: seconds !== undefined });
}
