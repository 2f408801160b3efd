import type { Settings } from "../settings/settings.ts";

/** True when nearly every value is larger than the one before: so does time, and no force. */
export function isSteadilyRising(values: Float64Array, settings: Settings): boolean {
  if (values.length < 2) return false;
  const count = values.length;
  let rising = 0;
  for (let index = 1; index < count; index++) if (values[index]! > values[index - 1]!) rising++;
  return rising >= settings.timeRisingFraction * (count - 1);
}

/** True when no value is smaller than the one before: stamps that share their last printed place do so. */
export function neverFalls(values: Float64Array): boolean {
  for (let index = 1; index < values.length; index++) if (values[index]! < values[index - 1]!) return false;
  return values.length > 1 && values.at(-1)! > values[0]!;
}

/** No setting: more rows would say the same. */
const rowsForResolution = 200;
/** No setting: doubles hold no more decimals of a time. */
const mostDecimals = 9;

/**
 * The last printed place of the stamps (0.001 for "0.017"), from the values themselves; 0 where they have more than
 * nine decimals. A printed stamp is off by at most this much (half of it when rounded, all of it when cut).
 */
export function printedResolution(stamps: Float64Array): number {
  const count = Math.min(stamps.length, rowsForResolution);
  for (let decimals = 0; decimals <= mostDecimals; decimals++) {
    const scale = 10 ** decimals;
    let fits = true;
    for (let index = 0; fits && index < count; index++) {
      const scaled = stamps[index]! * scale;
      // Seconds since 1970 leave doubles few decimals: the allowance is what their rounding makes, and no more.
      fits = Math.abs(scaled - Math.round(scaled)) <= 1e-9 + 4 * Number.EPSILON * Math.abs(scaled);
    }
    if (fits) return 1 / scale;
  }
  return 0;
}

/** No setting: it spares time; a median of more says the same. */
const spansCompared = 1000;

/**
 * The time step, from the median over spans of many steps, which neither rounding nor a few gaps move. Spans over which
 * time runs backwards count only where there are no others.
 */
export function typicalStep(stamps: Float64Array, settings: Settings): number {
  const span = Math.min(settings.timeStepsAveraged, stamps.length - 1);
  const stride = Math.ceil((stamps.length - span) / spansCompared);
  const steps: number[] = [];
  const rising: number[] = [];
  let falls = nextFall(stamps, 1);
  for (let start = 0; start + span < stamps.length; start += stride) {
    const step = (stamps[start + span]! - stamps[start]!) / span;
    steps.push(step);
    if (falls <= start) falls = nextFall(stamps, start + 1);
    if (falls > start + span) rising.push(step);
  }
  const counted = Float64Array.from(rising.length > 0 ? rising : steps).sort();
  return counted[counted.length >> 1]!;
}

/** The first row from `from` on before which time runs backwards; the number of rows where none is left. */
function nextFall(stamps: Float64Array, from: number): number {
  const rows = stamps.length;
  let row = from;
  while (row < rows && !(stamps[row]! < stamps[row - 1]!)) row++;
  return row;
}
