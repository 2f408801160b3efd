import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { agrees, type PublishedCheck } from "./checks/published-check.ts";
import { checkGroups, validationDocument, validationRows } from "./validation-table.ts";

const committed = readFileSync(new URL("VALIDATION.md", import.meta.url), "utf8");

describe.each(checkGroups.map((group) => [group.subject, group.checks] as const))("%s", (_, checks) => {
  test.each(checks.map((check) => [check.check, check] as const))("%s", (_, check) => {
    const ours = check.ours();
    expect(Math.abs(ours - check.expected), check.source).toBeLessThanOrEqual(check.tolerance);
  });
});

test("the committed table is the one that the checks give today", () => {
  expect(validationDocument(validationRows())).toBe(committed);
});

test("every check names its source and is named once", () => {
  const checks = checkGroups.flatMap((group) => group.checks.map((check) => ({ subject: group.subject, ...check })));
  for (const { check, source } of checks) expect(source, check).not.toBe("");
  // "The same: …" continues the check above it.
  const own = checks.filter(({ check }) => !check.startsWith("the same")).map(({ subject, check }) => subject + check);
  expect(new Set(own).size).toBe(own.length);
});

test("a value outside its tolerance, and none at all, are said to differ", () => {
  const check: PublishedCheck = {
    check: "one",
    source: "by hand",
    expected: 1,
    unit: "1",
    tolerance: 0.01,
    ours: () => 1,
  };
  expect(agrees(check, 1.009)).toBe(true);
  expect(agrees(check, 1.011)).toBe(false);
  expect(agrees(check, Number.NaN)).toBe(false);
});
