import fc from "fast-check";

const digits = (least: number, most: number): fc.Arbitrary<string> =>
  fc.array(fc.constantFrom(..."0123456789"), { minLength: least, maxLength: most }).map((parts) => parts.join(""));

const exponent = fc
  .tuple(fc.constantFrom("e", "E"), fc.constantFrom("", "-", "+"), digits(1, 3))
  .map((parts) => parts.join(""));

/** Decimal numbers with a point as people and programs write them: "+5", "5.", ".5", "-0", 40 digits, exponents. */
export const numberText: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(
        fc.constantFrom("", "-", "+"),
        fc.oneof(digits(1, 4), digits(1, 22)),
        fc.constantFrom("", "."),
        fc.oneof(digits(0, 4), digits(0, 26)),
        fc.oneof({ weight: 2, arbitrary: fc.constant("") }, { weight: 1, arbitrary: exponent }),
      )
      .map((parts) => parts.join(""))
      .filter((text) => Number.isFinite(Number(text))),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom("", "-", "+"), digits(1, 26)).map(([sign, decimals]) => `${sign}.${decimals}`),
  },
  { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }).map(String) },
  {
    weight: 1,
    arbitrary: fc.constantFrom("-0", "+0", "-0.0", "-.0", "0e0", "-0e-5", "9007199254740993", "4.35", "0.1e-400"),
  },
);
