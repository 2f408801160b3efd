/**
 * Values closer to a mark than this part of it differ by floating-point rounding only. No setting: rounding of
 * doubles.
 */
const roundingPart = 1e-9;

/** True when a percentage is at or above a mark; floating-point rounding does not count as being below. */
export function reaches(value: number, mark: number): boolean {
  return value >= mark - Math.abs(mark) * roundingPart;
}
