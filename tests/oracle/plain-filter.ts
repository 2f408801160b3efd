/**
 * Zero-lag Butterworth low-pass in plain loops (METHODS §1): one second-order section a pass, two passes, the cut-off
 * corrected on the warped frequency so that both passes together are 3 dB down at it, nine samples of odd reflection at
 * each end, each pass begun in the settled state of its first value.
 */
export function plainLowPass(samples: readonly number[], rateHz: number, cutoffHz: number): number[] {
  const warped = Math.tan((Math.PI * cutoffHz) / rateHz) / (Math.SQRT2 - 1) ** (1 / 4);
  const a0 = warped ** 2 / (1 + Math.SQRT2 * warped + warped ** 2);
  const a1 = 2 * a0;
  const a2 = a0;
  // Winter's letters and signs: y = a0·x0 + a1·x1 + a2·x2 + b1·y1 + b2·y2.
  const b1 = (2 * a0) / warped ** 2 - 2 * a0;
  const b2 = 1 - (a0 + a1 + a2) - b1;
  const pass = (input: readonly number[]): number[] => {
    const output: number[] = [];
    for (let index = 0; index < input.length; index++) {
      // Before the first value everything stood at it: the settled state.
      const x1 = input[index - 1] ?? input[0]!;
      const x2 = input[index - 2] ?? input[0]!;
      const y1 = output[index - 1] ?? input[0]!;
      const y2 = output[index - 2] ?? input[0]!;
      output.push(a0 * input[index]! + a1 * x1 + a2 * x2 + b1 * y1 + b2 * y2);
    }
    return output;
  };
  const padding = Math.min(9, samples.length - 1);
  const padded: number[] = [];
  for (let k = padding; k >= 1; k--) padded.push(2 * samples[0]! - samples[k]!);
  padded.push(...samples);
  const last = samples.length - 1;
  for (let k = 1; k <= padding; k++) padded.push(2 * samples[last]! - samples[last - k]!);
  const forwards = pass(padded);
  const backwards = pass(forwards.reverse()).reverse();
  return backwards.slice(padding, padding + samples.length);
}
