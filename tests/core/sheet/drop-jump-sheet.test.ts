import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import schema from "../../../core/sheet/result.schema.json" with { type: "json" };
import { resultDocument, resultJson } from "../../../core/sheet/result-document.ts";
import { analyzeSamples } from "../simulated/session.ts";
import { firstPage, sheetTexts, tableRows } from "./sheet-text.ts";

const { result } = analyzeSamples("maren-tveitlund/6-month-11");
const sheet = buildSheet(result, defaultSettings);
const rowOf = (caption: string, label: RegExp) => tableRows(sheet, caption).find(([first]) => label.test(first ?? ""));

/** The demo table prints two decimals; the spread of its four trials is scaled to its means. */
const indexTolerance = 0.015;

describe("the sheet of a session with drop jumps", () => {
  test("names the box of every table, and keeps both numbers of legs apart", () => {
    const captions = sheet.blocks.flatMap((block) => (block.kind === "table" ? [block.caption] : []));
    expect(captions).toContain("Drop jump, two legs, from 0.30\u00a0m: limbs compared within each jump");
    expect(captions).toContain(
      "Drop jump, single-leg, from 0.20\u00a0m: trials of one limb against trials of the other",
    );
    expect(captions).toContain("Drop jump, two legs, from 0.30\u00a0m: both legs together");
  });

  test("gives reactive strength index and contact time of both legs together", () => {
    const caption = "Drop jump, two legs, from 0.30\u00a0m: both legs together";
    // Demo table, month 11: 26.4 cm, 0.206 s, 1.28 m/s.
    expect(Math.abs(Number(rowOf(caption, /^Reactive strength index m\/s/)?.[1]) - 1.28)).toBeLessThan(indexTolerance);
    expect(Math.abs(Number(rowOf(caption, /^Contact time/)?.[1]) - 0.206)).toBeLessThan(0.003);
  });

  test("shows each attempt with the leg that led and what a drop jump is told by", () => {
    const rows = tableRows(sheet, "Drop jump, two legs, from 0.30\u00a0m: every attempt, all used, not looked at yet");
    expect(new Set(rows.map((row) => row[2]))).toEqual(new Set(["left", "right"]));
    const texts = sheetTexts(sheet).join("\n");
    expect(texts).toContain("Leading leg | Height by flight time, cm | Contact time, s | Reactive strength index, m/s");
  });

  test("words what a criterion asks for in the unit of its measure", () => {
    const row = rowOf("Criteria as they stand today", /two-leg drop jump from 0\.30/);
    expect(row?.[0]).toContain("at least 1.3\u00a0m/s");
    expect(row?.[1]).toMatch(/^too close to call \(1\.\d+\u00a0m\/s, leaning/);
  });

  test("says in its methods that boxes stay apart, leads are averaged and values have a t interval", () => {
    const methods = sheetTexts(sheet).find((text) => text.startsWith("Vertical ground reaction force")) ?? "";
    for (const said of [
      "Trials from different box heights are never mixed.",
      "the mean of its means with the left and with the right leg leading",
      "its interval is the t interval of the mean of the trials",
      "The reactive strength index is jump height by flight time over contact time",
    ]) {
      expect(methods).toContain(said);
    }
  });

  test("says on its first page where the athlete is not whom the criteria were set for", () => {
    const note = "The criteria were set for pivoting sports; this athlete's sport, rowing, is not listed among them.";
    expect(sheetTexts(sheet)).not.toContain(note);
    const rower = { ...result.description, athlete: { code: "GH-07", sport: "rowing" } };
    expect(sheetTexts(firstPage(buildSheet({ ...result, description: rower }, defaultSettings)))).toContain(note);
  });
});

describe("the result document of a session with drop jumps", () => {
  const document = JSON.parse(resultJson(resultDocument([result], defaultSettings)));

  test("keeps to the published schema", () => {
    const validate = new Ajv2020({
      allErrors: true,
      strict: true,
      strictRequired: false,
      allowUnionTypes: true,
    }).compile(schema);
    validate(document);
    expect(validate.errors ?? []).toEqual([]);
  });

  test("names box and leads of a comparison, and box and unit of a criterion", () => {
    const find = (list: readonly Record<string, unknown>[], wanted: Record<string, unknown>) =>
      list.find((each) => Object.entries(wanted).every(([name, value]) => each[name] === value));
    const comparison = find(document.comparisons, { test: "dropJump", legs: "both", measure: "brakingImpulse" });
    expect(comparison).toMatchObject({ dropHeightMetres: 0.3, threshold: 90 });
    expect(comparison?.leads).toHaveLength(4);
    const criterion = find(document.criteria, { id: "drop-jump-reactive-strength-index" });
    expect(criterion).toMatchObject({ kind: "absolute", threshold: 1.3, unit: "m/s", dropHeightMetres: 0.3 });
    const reader = find(document.comparisons, { test: "dropJump", measure: "reactiveStrengthIndex" });
    expect(reader).not.toHaveProperty("threshold");
  });
});
