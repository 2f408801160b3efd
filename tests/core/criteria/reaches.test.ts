import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reaches } from "../../../core/criteria/reaches.ts";
import { formatPercent } from "../../../core/ground/format-number.ts";

describe("a percentage", () => {
  it.each([
    [91.4, "91\u00a0%"],
    [90, "90\u00a0%"],
    [89.6, "89.6\u00a0%"],
    [89.96, "89.96\u00a0%"],
    [90.3, "90.3\u00a0%"],
    [88.5001, "89\u00a0%"],
    [110.2, "110.2\u00a0%"],
    [90.00000000000001, "90\u00a0%"],
  ])("of %d reads %s beside marks at 90 and 110", (value, text) => {
    expect(formatPercent(value, [90, 110])).toBe(text);
  });

  it("never reads as being on the other side of a mark", () => {
    fc.assert(
      fc.property(fc.double({ min: 85, max: 115, noNaN: true }), (value) => {
        const shown = Number(formatPercent(value, [90, 110]).replace("\u00a0%", ""));
        for (const mark of [90, 110]) {
          // Within a millionth of the mark the six printed decimals end.
          if (Math.abs(value - mark) > 1e-6) expect(Math.sign(shown - mark)).toBe(Math.sign(value - mark));
        }
      }),
    );
  });

  it("reaches a mark whatever floating-point rounding does to it", () => {
    expect(100 * (0.126 / 0.14)).toBeCloseTo(90, 12);
    expect(reaches(100 * (0.126 / 0.14), 90)).toBe(true);
    expect(reaches(89.9999999999, 90)).toBe(true);
    expect(reaches(89.999, 90)).toBe(false);
  });
});
