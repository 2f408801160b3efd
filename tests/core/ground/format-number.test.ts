import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  formatPercent,
  formatSheetValue,
  formatValue,
  joinNumberText,
  noValue,
  percentDigits,
  roundTo,
} from "../../../core/ground/format-number.ts";
import type { UcumUnit } from "../../../core/ground/units.ts";

// Expected texts are by hand from the rule: one significant digit of the uncertainty, two when the first is a 1.
const cases: readonly (readonly [number, number | undefined, UcumUnit, string, string, string])[] = [
  [672.731, 0.31, "N", "672.7", "0.3", "N"],
  [672.731, 0.149, "N", "672.73", "0.15", "N"],
  [1498.4, 23, "N", "1500", "20", "N"],
  [1498.4, 13, "N", "1498", "13", "N"],
  [3101, 250, "W", "3100", "300", "W"],
  [0.2664, 0.0021, "m", "26.6", "0.2", "cm"],
  [0.2664, 0.0013, "m", "26.64", "0.13", "cm"],
  [0.7301, 0.031, "s", "0.73", "0.03", "s"],
  [-84.23, 0.4, "N.s", "\u221284.2", "0.4", "N·s"],
  // 0.0996 rounds to 0.10: its first digit has become a 1, so two digits stay.
  [2.28, 0.0996, "m/s", "2.28", "0.10", "m/s"],
  // 0.196 rounds to 0.20: its first digit has become a 2, so one digit stays.
  [2.28, 0.196, "m/s", "2.3", "0.2", "m/s"],
  // 0.96 rounds to 1.0 at its own place, which is the two digits a leading 1 keeps.
  [9.96, 0.96, "N/kg", "10.0", "1.0", "N/kg"],
];

describe("a value", () => {
  test.each(cases)("%d ± %d %s reads %s ± %s %s", (value, uncertainty, unit, valueText, uncertaintyText, symbol) => {
    expect(formatValue(value, uncertainty, unit)).toEqual({ value: valueText, uncertainty: uncertaintyText, symbol });
  });

  test("without uncertainty keeps the stated precision of its unit", () => {
    const units: readonly (readonly [number, UcumUnit, string])[] = [
      [0.26644, "m", "26.6"],
      [0.73016, "s", "0.730"],
      [672.73, "N", "673"],
      [9, "{count}", "9"],
      [68.64, "kg", "68.6"],
      [1.3636, "N.s/kg", "1.36"],
      [2.2136, "1", "2.21"],
    ];
    for (const [value, unit, text] of units) expect(formatValue(value, undefined, unit).value).toBe(text);
    expect(formatValue(0.26644, undefined, "m").uncertainty).toBe("");
  });

  test("with an uncertainty of zero or none at all is treated alike", () => {
    expect(formatValue(1.2345, 0, "m/s")).toEqual(formatValue(1.2345, undefined, "m/s"));
    expect(formatValue(1.2345, Number.NaN, "m/s")).toEqual(formatValue(1.2345, undefined, "m/s"));
  });

  test("beside a threshold gets the decimals that keep it on its own side", () => {
    // By hand: two decimals would make 1.298 read 1.30; 1.28 reads the same with or without the threshold.
    expect(formatValue(1.298, undefined, "m/s", [1.3]).value).toBe("1.298");
    expect(formatValue(1.28, undefined, "m/s", [1.3]).value).toBe("1.28");
    expect(formatValue(1.3, undefined, "m/s", [1.3]).value).toBe("1.30");
    // Thresholds are in the unit of the value, 12.5 cm here.
    expect(formatValue(0.12496, undefined, "m", [0.125])).toMatchObject({ value: "12.496", symbol: "cm" });
  });

  test("that is missing is an en dash without unit", () => {
    expect(formatValue(undefined, 0.1, "m")).toEqual({ value: "–", uncertainty: "", symbol: "cm" });
    expect(joinNumberText(formatValue(undefined, undefined, "m"))).toBe(noValue);
  });

  test("joins into one line with its uncertainty and unit", () => {
    expect(joinNumberText(formatValue(0.2664, 0.0021, "m"))).toBe("26.6 ± 0.2\u00a0cm");
    expect(joinNumberText(formatValue(2.2136, undefined, "1"))).toBe("2.21");
  });

  test("never shows a hyphen for a minus and never a minus before zero", () => {
    expect(roundTo(-0.04, 1)).toBe("0.0");
    expect(roundTo(-4, -1)).toBe("0");
    expect(roundTo(-0.06, 1)).toBe("\u22120.1");
    expect(roundTo(-26, -1)).toBe("\u221230");
  });

  test("is never further from the shown text than half the last digit of the uncertainty", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-4, max: 1e4, noNaN: true }),
        (value, uncertainty) => {
          const text = formatValue(value, uncertainty, "N");
          const shown = Number(text.value.replace("\u2212", "-"));
          // Half a place is at most half the shown uncertainty (one digit) or a twentieth of it (two digits).
          expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.5 * Number(text.uncertainty) * (1 + 1e-9));
          // 25 %: the worst rounding of an uncertainty to one digit, 0.25 → 0.3 or 0.2, is a fifth to a quarter.
          expect(Math.abs(Number(text.uncertainty) - uncertainty)).toBeLessThanOrEqual(0.25 * uncertainty);
        },
      ),
    );
  });
});

describe("a value of the sheet", () => {
  // By hand from the finest places of the sheet: 0.1 cm, 1 ms, 0.01 m/s, 1 N, 0.1 N·s.
  test.each<readonly [number, number, UcumUnit, string, string]>([
    [0.2473, 0.00013, "m", "24.7", "<0.1"],
    [0.21548, 0.00015, "s", "0.215", "<0.001"],
    [0.21548, 0.0006, "s", "0.215", "0.001"],
    [2.2814, 0.0013, "m/s", "2.28", "<0.01"],
    [1498.44, 0.13, "N", "1498", "<1"],
    [93.118, 0.012, "N.s", "93.1", "<0.1"],
    // Coarser than the finest place: as everywhere.
    [0.2664, 0.0021, "m", "26.6", "0.2"],
    [1498.4, 23, "N", "1500", "20"],
  ])("%d ± %d %s reads %s ± %s", (value, uncertainty, unit, valueText, uncertaintyText) => {
    expect(formatSheetValue(value, uncertainty, unit)).toMatchObject({
      value: valueText,
      uncertainty: uncertaintyText,
    });
  });

  test("beside a threshold keeps the decimals that show on which side it lies", () => {
    expect(formatSheetValue(1.2983, 0.0004, "m/s", [1.3])).toMatchObject({ value: "1.298", uncertainty: "<0.001" });
    expect(formatSheetValue(1.2983, 0.0004, "m/s")).toMatchObject({ value: "1.30", uncertainty: "<0.01" });
  });
});

describe("a per cent value", () => {
  test("is whole, with a no-break space before the sign", () => {
    expect(formatPercent(83.6)).toBe("84\u00a0%");
    expect(formatPercent(undefined)).toBe("–");
  });

  // By hand: 89.6 and 90.4 would both read 90; 89.97 needs two decimals; 90 itself, up to floating-point rounding, is on the threshold.
  test.each([
    [89.6, "89.6"],
    [90.4, "90.4"],
    [89.97, "89.97"],
    [90, "90"],
    [89.4, "89"],
    [91.2, "91"],
    [90 + 1e-11, "90"],
  ])("of %d never rounds onto or across a threshold of 90", (percent, text) => {
    expect(percentDigits(percent, [90])).toBe(text);
  });
});
