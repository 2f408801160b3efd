import { describe, expect, test } from "vitest";
import type { Status } from "../../../core/ground/status.ts";
import { statusMarkBox, statusMarkSvg, statusMarks } from "../../../core/sheet/status-mark.ts";
import {
  type SymmetryLineColours,
  symmetryAxis,
  symmetryLineSize,
  symmetryLineSvg,
  symmetryLineText,
} from "../../../core/sheet/symmetry-line.ts";
import { english } from "../../../core/words/english.ts";

const colours: SymmetryLineColours = {
  axis: "axis",
  region: "region",
  tick: "tick",
  involved: "involved",
  ink: "ink",
  paper: "paper",
};

describe("the marks of the statuses", () => {
  const statuses = Object.keys(statusMarks) as Status[];

  test("exist for every status and differ in shape", () => {
    expect(statuses.every((status) => english.statuses.label(status) !== undefined)).toBe(true);
    expect(new Set(Object.values(statusMarks)).size).toBe(statuses.length);
  });

  test("stay within their box", () => {
    for (const path of Object.values(statusMarks)) {
      const numbers = path.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
      expect(numbers.length).toBeGreaterThan(3);
      expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...numbers)).toBeLessThanOrEqual(statusMarkBox);
    }
  });

  test("take the colour they are given and no other, and are hidden from readers of the word", () => {
    const svg = statusMarkSvg("met", "currentColor", 12);
    expect(svg).toContain('stroke="currentColor"');
    expect(svg).toContain('fill="none"');
    expect(svg).not.toMatch(/#[0-9a-f]{3}/i);
    expect(svg).toContain('aria-hidden="true"');
  });
});

describe("a symmetry line", () => {
  const line = {
    index: 90,
    thick: { low: 80, high: 100 },
    thin: { low: 70, high: 110 },
    threshold: 90,
    limb: "involved",
  } as const;
  const axis = { low: 60, high: 120 };

  test("puts index, interval and threshold to scale", () => {
    const svg = symmetryLineSvg(line, axis, colours);
    // By hand: 4 px inset each side of 116 px; 90 is the middle of 60 to 120, 58 px; 80 and 100 are a sixth of 108 px away.
    expect(symmetryLineSize.width).toBe(116);
    expect(svg).toContain('<circle cx="58"');
    expect(svg).toContain("M40 9H76");
    expect(svg).toContain("M22 9H94");
    expect(svg).toContain("M58 1V17");
    expect(svg).toContain('<rect x="58" y="3" width="54"');
  });

  test("wears the involved limb's colour only where one is involved", () => {
    expect(symmetryLineSvg(line, axis, colours)).toContain("stroke:involved");
    const { limb: _limb, ...plain } = line;
    expect(symmetryLineSvg(plain, axis, colours)).not.toContain("stroke:involved");
  });

  test("ends in an arrow head where an interval leaves the axis, and never draws outside", () => {
    const wide = symmetryLineSvg({ ...line, thin: { low: 10, high: 250 } }, axis, colours);
    expect(wide).toContain("M4 9H112");
    expect(wide).toContain("M8 6L4 9L8 12");
    expect(wide).toContain("M108 6L112 9L108 12");
    expect(symmetryLineSvg(line, axis, colours)).not.toContain("L4 9L");
  });

  test("says itself in words, with the digits that tell it from its threshold", () => {
    expect(symmetryLineText({ ...line, index: 89.8 })).toBe(
      "Index 89.8 per cent, interval 80 to 100, wider interval 70 to 110, threshold 90",
    );
    expect(symmetryLineText({ index: 101.6 })).toBe("Index 102 per cent");
  });

  test("shares its axis with the table: steps of ten, wide enough, within reason", () => {
    expect(symmetryAxis([])).toEqual({ low: 60, high: 120 });
    expect(symmetryAxis([line, { index: 131, thin: { low: 52, high: 140.5 } }])).toEqual({ low: 50, high: 150 });
    expect(symmetryAxis([{ index: 90, thin: { low: -400, high: 900 } }])).toEqual({ low: 20, high: 200 });
  });
});
