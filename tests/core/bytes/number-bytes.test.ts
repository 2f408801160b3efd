import fc from "fast-check";
import { expect, test } from "vitest";
import { readNumber } from "../../../core/bytes/number-bytes.ts";
import { isMissing, parseNumberText } from "../../../core/bytes/number-text.ts";
import { numberText } from "./number-texts.ts";

const point = 46;
const comma = 44;

/** What the byte reader makes of a whole text; NaN where it does not reach the end. */
function readAll(text: string, decimalByte: number): number {
  const bytes = new TextEncoder().encode(`${text}\n`);
  const target = new Float64Array(1);
  return readNumber(bytes, 0, decimalByte, target, 0) === bytes.length - 1 ? target[0]! : Number.NaN;
}

test("a number read from bytes is identical to Number() for any sign, decimals and exponent", () => {
  fc.assert(
    fc.property(numberText, (text) => Object.is(readAll(text, point), Number(text))),
    { numRuns: 20_000 },
  );
});

test("a double printed as short as possible comes back unchanged", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) =>
      Object.is(readAll(String(value), point), value === 0 ? Number(String(value)) : value),
    ),
    { numRuns: 20_000 },
  );
});

test("a decimal comma gives the number that a decimal point gives", () => {
  fc.assert(
    fc.property(numberText, (text) => Object.is(readAll(text.replace(".", ","), comma), Number(text))),
    { numRuns: 5_000 },
  );
});

test("the text parser and the byte parser agree on any short text made of number characters", () => {
  const anything = fc
    .array(fc.constantFrom(..."0123456789+-.,eE "), { maxLength: 10 })
    .map((parts) => parts.join("").trim())
    .filter((text) => text !== "");
  fc.assert(
    fc.property(anything, (text) => Object.is(readAll(text, point), parseNumberText(text, "point"))),
    { numRuns: 20_000 },
  );
});

// By hand: each is no plain decimal number, although Number() accepts some of them.
test.each(["", ".", "-", "+", "e5", "1e", "1e+", "1.2.3", "0x10", "Infinity", "1e999", "1,5", "1 2", "--1", "12a"])(
  "%j is no number",
  (text) => {
    expect(readAll(text, point)).toBeNaN();
    expect(parseNumberText(text, "point")).toBeNaN();
  },
);

test("blanks around a cell and a typographic minus do not matter", () => {
  expect(parseNumberText("  3.25 ", "point")).toBe(3.25); // by hand
  expect(parseNumberText("\u22123,25", "comma")).toBe(-3.25); // by hand
});

test("the usual words for a missing value are recognised in any case", () => {
  for (const word of ["", " ", "NaN", "nan", "N/A", "-", "NULL"]) expect(isMissing(word)).toBe(true);
  for (const word of ["0", "force", "1.5"]) expect(isMissing(word)).toBe(false);
});
