import type { Comparison } from "../sides/comparison.ts";

/** Why nothing that needs a side has a status while feet are in doubt; empty where they are known. */
export function feetReason(plates: Comparison["plates"]): string {
  switch (plates) {
    case "contradicted":
      return "Which foot was on which plate is contradicted (by single-leg trials, or by the leg stated for one): no status until a person says which is right.";
    case "unproved":
      return "Which foot was on which plate is not proved: no status until a single-leg trial or the tester says.";
    default:
      return "";
  }
}
