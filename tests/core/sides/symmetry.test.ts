import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { signedAsymmetry, symmetryIndex } from "../../../core/sides/symmetry.ts";

/** CHECKS D2 prints three decimals. */
const printed = 3;

const positive = fc.double({ min: 1, max: 2000, noNaN: true });

describe("symmetry", () => {
  it("has the index of CHECKS D2, involved over uninvolved", () => {
    expect(symmetryIndex(700, 800)).toBeCloseTo(87.5, printed);
    expect(symmetryIndex(800, 700)).toBeCloseTo(114.286, printed);
  });

  it("has the signed form of Jordan, Aagaard and Herzog: positive when the left is larger", () => {
    // CHECKS D2, bilateral strength asymmetry 12.5 with the sign by side.
    expect(signedAsymmetry(800, 700)).toBeCloseTo(12.5, printed);
    expect(signedAsymmetry(700, 800)).toBeCloseTo(-12.5, printed);
  });

  it("turns over when the sides are swapped: the index inverts, the signed form changes its sign", () => {
    fc.assert(
      fc.property(positive, positive, (left, right) => {
        expect(symmetryIndex(left, right) * symmetryIndex(right, left)).toBeCloseTo(10000, 6);
        expect(signedAsymmetry(left, right)).toBeCloseTo(-signedAsymmetry(right, left), 9);
      }),
    );
  });
});
