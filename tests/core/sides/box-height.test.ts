import { describe, expect, it } from "vitest";
import { startsFromBox } from "../../../core/ground/test-kind.ts";
import { boxHeights, boxHeightText, sameBoxHeight } from "../../../core/sides/box-height.ts";

describe("box heights", () => {
  it("belong to the tests that start from a box", () => {
    expect((["dropJump", "dropLanding"] as const).every(startsFromBox)).toBe(true);
    expect((["countermovementJump", "squatJump", "repeatedHops"] as const).some(startsFromBox)).toBe(false);
  });

  it("are one box however the number was written, and another from the next millimetre", () => {
    // 3·0.1 is 0.30000000000000004 in floating point.
    expect(sameBoxHeight(3 * 0.1, 0.3)).toBe(true);
    expect(sameBoxHeight(0.3, 0.301)).toBe(false);
    expect(sameBoxHeight(undefined, undefined)).toBe(true);
    expect(sameBoxHeight(0.3, undefined)).toBe(false);
  });

  it("are listed once each, rising, the unstated one last", () => {
    const trials = [{ dropHeightMetres: 0.4 }, {}, { dropHeightMetres: 0.2 }, { dropHeightMetres: 0.4 }, {}];
    expect(boxHeights(trials)).toEqual([0.2, 0.4, undefined]);
    expect(boxHeights([])).toEqual([]);
  });

  it("are written in metres, to the millimetre only where they have one", () => {
    expect([0.3, 0.155, 1].map(boxHeightText)).toEqual(["0.30\u00a0m", "0.155\u00a0m", "1.00\u00a0m"]);
  });
});
