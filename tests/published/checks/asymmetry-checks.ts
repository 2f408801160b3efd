import { signedAsymmetry, symmetryIndex } from "../../../core/sides/symmetry.ts";
import type { CheckGroup } from "./published-check.ts";

const limbSymmetry = "100 · involved / uninvolved (formula read); example worked out by hand";
const deficit = "100 · (1 − involved / uninvolved), from memory; example worked out by hand";
const strongest = "Impellizzeri et al. 2007, Med Sci Sports Exerc 39(11):2044–2050, read; example worked out by hand";
const signed =
  "100 · (L − R) / max(L, R), Jordan, Aagaard and Herzog 2015 (formula from memory); example worked out by hand";

/** Printed to three decimals. */
const printed = 5e-4;

export const asymmetryChecks: CheckGroup = {
  subject: "Asymmetry of two limbs",
  checks: [
    {
      check: "limb symmetry index, involved 700, uninvolved 800",
      source: limbSymmetry,
      expected: 87.5,
      unit: "%",
      tolerance: printed,
      ours: () => symmetryIndex(700, 800),
    },
    {
      check: "limb symmetry index, involved 800, uninvolved 700",
      source: limbSymmetry,
      expected: 114.286,
      unit: "%",
      tolerance: printed,
      ours: () => symmetryIndex(800, 700),
    },
    {
      check: "deficit that the index leaves to 100 %, involved 700, uninvolved 800",
      source: deficit,
      expected: 12.5,
      unit: "%",
      tolerance: printed,
      ours: () => 100 - symmetryIndex(700, 800),
    },
    {
      check: "the same, involved 800, uninvolved 700",
      source: deficit,
      expected: -14.286,
      unit: "%",
      tolerance: printed,
      ours: () => 100 - symmetryIndex(800, 700),
    },
    {
      check: "signed asymmetry, left 800, right 700",
      source: signed,
      expected: 12.5,
      unit: "%",
      tolerance: printed,
      ours: () => signedAsymmetry(800, 700),
    },
    {
      check: "signed asymmetry, left 700, right 800",
      source: signed,
      expected: -12.5,
      unit: "%",
      tolerance: printed,
      ours: () => signedAsymmetry(700, 800),
    },
    {
      check: "size of the asymmetry, (stronger − weaker) / stronger, 800 and 700",
      source: strongest,
      expected: 12.5,
      unit: "%",
      tolerance: printed,
      ours: () => Math.abs(signedAsymmetry(700, 800)),
    },
  ],
};
