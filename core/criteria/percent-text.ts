/** Beyond this many decimals a difference from a mark is rounding, not a measurement. */
const mostDecimals = 6;

/** Values closer to a mark than this part of it differ by floating-point rounding only. */
const roundingPart = 1e-9;

/** True when a percentage is at or above a mark; floating-point rounding does not count as being below. */
export function reaches(value: number, mark: number): boolean {
  return value >= mark - Math.abs(mark) * roundingPart;
}

function sideOf(value: number, mark: number): number {
  return Math.abs(value - mark) <= Math.abs(mark) * roundingPart ? 0 : Math.sign(value - mark);
}

/**
 * A percentage without its sign, with no decimals unless rounding would put it on the other side of a mark or onto it:
 * 89.6 against 90 prints "89.6", never "90".
 */
export function percentNumber(value: number, marks: readonly number[]): string {
  for (let decimals = 0; decimals < mostDecimals; decimals += 1) {
    const text = value.toFixed(decimals);
    if (marks.every((mark) => sideOf(Number(text), mark) === sideOf(value, mark))) return text;
  }
  return value.toFixed(mostDecimals);
}

/** The same with its sign: "89.6 %". */
export function percentText(value: number, marks: readonly number[]): string {
  return `${percentNumber(value, marks)} %`;
}
