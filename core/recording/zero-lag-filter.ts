import type { Settings } from "../settings/settings.ts";
import { canFilter, designButterworth, type FilterSection, singlePassCutoffHz } from "./filter-design.ts";

/**
 * Low-passes a signal without delay: one second-order Butterworth section forward and backward, 3 dB down at
 * `cutoffHz` for both passes together.
 *
 * Each end is continued by odd reflection (2·x[0] − x[k]) over 9 samples and each pass starts in the steady state of its
 * first value, as `scipy.signal.sosfiltfilt(sos, x, padtype="odd", padlen=9)` does; a constant stays a constant. A
 * signal of fewer than 10 samples is continued by all the samples it has besides the first (n − 1). Where the cut-off
 * lies at or above half the sampling rate nothing can be removed and the values come back unchanged; `describeFilter`
 * says so.
 *
 * @param signal any unit, one value a sample, finite; not changed.
 * @param cutoffHz above 0.
 */
export function zeroLagFilter(
  signal: Float64Array,
  rateHz: number,
  cutoffHz: number,
  settings: Settings,
): Float64Array {
  if (!canFilter(rateHz, cutoffHz) || signal.length === 0) return signal.slice();
  const section = designButterworth(rateHz, singlePassCutoffHz(rateHz, cutoffHz));
  return filterForwardBackward(signal, section, settings);
}

/** Runs one section forward and backward with odd reflection and settled initial state. */
function filterForwardBackward(signal: Float64Array, section: FilterSection, settings: Settings): Float64Array {
  const count = signal.length;
  const padding = Math.min(settings.filterPaddingSamples, count - 1);
  const extended = new Float64Array(count + 2 * padding);
  extended.set(signal, padding);
  const last = count - 1;
  for (let offset = 1; offset <= padding; offset++) {
    extended[padding - offset] = 2 * signal[0]! - signal[offset]!;
    extended[padding + last + offset] = 2 * signal[last]! - signal[last - offset]!;
  }
  runPass(extended, section, 0, extended.length, 1);
  runPass(extended, section, extended.length - 1, -1, -1);
  return extended.slice(padding, padding + count);
}

/** One pass in place (transposed direct form II), starting as if the first value had always been there. */
function runPass(values: Float64Array, section: FilterSection, from: number, to: number, step: 1 | -1): void {
  const { b0, b1, b2, a1, a2 } = section;
  const gain = (b0 + b1 + b2) / (1 + a1 + a2);
  const first = values[from]!;
  let state2 = (b2 - a2 * gain) * first;
  let state1 = (b1 - a1 * gain) * first + state2;
  for (let index = from; index !== to; index += step) {
    const input = values[index]!;
    const output = b0 * input + state1;
    state1 = b1 * input - a1 * output + state2;
    state2 = b2 * input - a2 * output;
    values[index] = output;
  }
}
