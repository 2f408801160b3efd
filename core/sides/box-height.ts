/**
 * Heights that differ by less than this are one box, written in different ways. No setting: half the last place in
 * which heights are written.
 */
const sameBoxMetres = 0.0005;

/** True when two trials were from the same box. A height nobody stated is the same as no other but an unstated one. */
export function sameBoxHeight(first: number | undefined, second: number | undefined): boolean {
  if (first === undefined || second === undefined) return first === second;
  return Math.abs(first - second) < sameBoxMetres;
}

/** The box heights of trials in metres, each once, rising; a height nobody stated comes last as undefined. */
export function boxHeights(trials: readonly { readonly dropHeightMetres?: number }[]): readonly (number | undefined)[] {
  const stated = trials.flatMap((trial) => trial.dropHeightMetres ?? []).sort((a, b) => a - b);
  const distinct = stated.filter((height, at) => at === 0 || !sameBoxHeight(height, stated[at - 1]));
  return trials.some((trial) => trial.dropHeightMetres === undefined) ? [...distinct, undefined] : distinct;
}

/** "0.30 m": a box height in words, to the centimetre or, where it has them, to the millimetre. */
export function boxHeightText(metres: number): string {
  const wholeCentimetres = Math.abs(metres * 100 - Math.round(metres * 100)) < 0.05;
  return `${metres.toFixed(wholeCentimetres ? 2 : 3)}\u00a0m`;
}
