import { expect, test } from "vitest";
import type { InvolvedSide } from "../../../core/ground/limb.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import { sheetHtml } from "../../../core/sheet/sheet-html.ts";
import { ofComparisonLimb, otherInjuryCautions } from "../../../core/sides/other-injuries.ts";
import { analyzeSamples } from "../simulated/session.ts";

const ankle = { side: "left", bodyPart: "ankle", what: "sprain.", date: "2026-11-16" } as const;

test("An injury that involves no side is told with its limb, day and what it may do to the comparison", () => {
  expect(otherInjuryCautions({ otherInjuries: [ankle], involved: "right" })).toEqual([
    "Left ankle, 16 November 2026: sprain. It may lower the comparison limb and lift the index.",
  ]);
  const { date: _day, ...undated } = ankle;
  expect(otherInjuryCautions({ otherInjuries: [{ ...undated, bodyPart: "other" }], involved: "none" })).toEqual([
    "Left: sprain. It may lower the left limb.",
  ]);
  expect(otherInjuryCautions({ otherInjuries: [ankle], involved: "left" })[0]).toContain("the involved limb too");
  expect(otherInjuryCautions({})).toEqual([]);
});

test("Beside a comparison only the limb that is compared with is spoken of, and only where one side is involved", () => {
  const of = (involved: InvolvedSide) => ofComparisonLimb({ otherInjuries: [ankle], involved });
  expect(of("right")).toEqual([ankle]);
  for (const involved of ["left", "both", "none"] as const) expect(of(involved)).toEqual([]);
  expect(ofComparisonLimb({ involved: "right" })).toEqual([]);
});

test("At month 9 of the demo the ankle sprain of the other leg is a caution in criteria rows and on the sheet", () => {
  const { result } = analyzeSamples("maren-tveitlund/5-month-9");
  expect(result.description.involved).toBe("right");
  const decided = result.criteria.filter(
    ({ criterion, estimate }) => criterion.kind === "symmetry" && estimate !== undefined,
  );
  expect(decided.length).toBeGreaterThan(3);
  for (const row of decided) expect(row.caution).toContain("an injury of its own: left ankle, 16 November 2026.");
  for (const row of result.criteria.filter(({ criterion }) => criterion.kind !== "symmetry")) {
    expect(row.caution).not.toContain("left ankle");
  }
  // On the sheet it is said once, among the facts.
  const html = sheetHtml(buildSheet(result, defaultSettings));
  expect(html.match(/left ankle/gi)).toHaveLength(1);
  expect(html).toContain("Left ankle, 16 November 2026: sprain");
});
