import { expect, test } from "vitest";
import { proseFinding, type Severity } from "../../../core/ground/finding.ts";
import type { FindingCode } from "../../../core/ground/finding-codes.ts";
import { fileOutcome } from "../../../electron/boundary/file-outcome.ts";

const outcomeOf = (...codes: readonly (readonly [FindingCode, Severity])[]) =>
  fileOutcome(
    codes.map(([code, severity]) => proseFinding(code, severity, "m", "a")),
    [],
  );

test.each([
  "rate-missing",
  "rate-contradicts",
  "unit-not-stated",
  "unit-contradicts",
  "weight-implausible",
  "mass-missing",
  "decimal-mark-unclear",
  "layout-unclear",
  "columns-unclear",
  "time-uneven",
  "test-not-stated",
  "limb-not-stated",
] as const)("a file refused for %s alone asks, because an answer can settle it", (code) => {
  expect(outcomeOf([code, "refusal"])).toBe("asks");
  expect(outcomeOf([code, "warning"])).toBe("understood");
  expect(outcomeOf([code, "refusal"], ["gap", "refusal"])).toBe("refused");
});

test.each(["gap", "not-data", "empty", "no-takeoff"] as const)("a file refused for %s stays refused", (code) => {
  expect(outcomeOf([code, "refusal"])).toBe("refused");
});
