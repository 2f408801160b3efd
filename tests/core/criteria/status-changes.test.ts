import { expect, test } from "vitest";
import { statusChanges } from "../../../core/criteria/status-changes.ts";
import { english } from "../../../core/words/english.ts";
import { analyzeSamples } from "../simulated/session.ts";

const month9 = "maren-tveitlund/5-month-9";
const before = analyzeSamples(month9).result.criteria;

test("A decision that leaves every status alone says so", () => {
  expect(english.statuses.changes(statusChanges(before, before))).toBe("It changes no status.");
});

test("An exclusion that leaves too few trials names the criterion and both statuses", () => {
  const { result } = analyzeSamples(month9, {
    description: (own) => ({
      ...own,
      files: [
        ...(own.files ?? []),
        { file: "countermovement-right-1.csv", excluded: { reason: "free leg swung" } },
        { file: "countermovement-right-2.csv", excluded: { reason: "free leg swung" } },
      ],
    }),
  });
  const said = english.statuses.changes(statusChanges(before, result.criteria));
  expect(said).toMatch(
    /^It changes a status\. Jump height symmetry, single-leg countermovement jump: .* before, not measured now/,
  );
});
