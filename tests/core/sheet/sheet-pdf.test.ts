import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import type { PdfContent } from "../../../core/sheet/pdf-definition.ts";
import { sheetPdfDefinition } from "../../../core/sheet/sheet-pdf.ts";
import { exampleSession, healthySession } from "./example-session.ts";

const sheet = buildSheet(exampleSession(), defaultSettings);
const definition = sheetPdfDefinition(sheet);

function walk(content: readonly PdfContent[]): readonly PdfContent[] {
  return content.flatMap((each) => [
    each,
    ...walk([
      ...(typeof each.text === "object" ? each.text : []),
      ...(each.ul ?? []),
      ...(each.stack ?? []),
      ...(each.columns ?? []),
      ...(each.table?.body.flat() ?? []),
    ]),
  ]);
}

describe("the PDF definition", () => {
  const nodes = walk(definition.content);
  const texts = nodes.flatMap((node) => (typeof node.text === "string" ? [node.text.trim()] : []));

  test("holds every text of the document", () => {
    for (const block of sheet.blocks) {
      if (block.kind === "paragraph" || block.kind === "heading") expect(texts).toContain(block.text);
      if (block.kind === "list") for (const item of block.items) expect(texts).toContain(item);
      if (block.kind === "facts") for (const { value } of block.items) expect(texts).toContain(value);
      if (block.kind === "write-in") for (const { name } of block.items) expect(texts).toContain(name);
      if (block.kind === "table") {
        expect(texts.includes(block.caption)).toBe(block.captionUnseen !== true);
        for (const column of block.columns) expect(texts).toContain(column.text);
        for (const { text, muted } of block.rows.flatMap((row) => row.cells)) {
          expect(texts).toContain(text);
          if (muted !== undefined) expect(texts).toContain(muted);
        }
      }
    }
  });

  test("gives every table row as many cells as there are widths", () => {
    for (const node of nodes) {
      const { table } = node;
      if (table) expect(new Set(table.body.map((row) => row.length))).toEqual(new Set([table.widths.length]));
    }
  });

  test("is the same for the same sheet and knows no clock", () => {
    const plain = (value: unknown) => JSON.stringify(value);
    expect(plain(sheetPdfDefinition(sheet))).toBe(plain(definition));
    expect(definition.info).toEqual({
      title: "Testing sheet: Maren Tveitlund",
      subject: "Session of 14 October 2026 · Month 7, team training without contact",
      creator: "Counterpoise",
      producer: "Counterpoise",
    });
  });

  test("runs the banner and the page number over every page", () => {
    expect(definition.header(2).text).toBe(sheet.banner);
    const footer = walk([definition.footer(2, 3)]).map((node) => node.text);
    expect(footer).toContain(sheet.footer);
    expect(footer).toContain("2 / 3");
  });

  test("starts the numbers on a page of their own and keeps the clinician's lines with their heading", () => {
    const start = nodes.find((node) => node.pageBreak === "before");
    expect(start?.text).toBe("Numbers and how sure they are");
    const kept = nodes.find(
      (node) => node.unbreakable && node.stack?.[0]?.text === "Decision of the treating clinician",
    );
    expect(kept).toBeDefined();
  });

  test("moves a heading that would stand alone at the foot of a page", () => {
    expect(definition.pageBreakBefore({ headlineLevel: 2, startPosition: { verticalRatio: 0.97 } })).toBe(true);
    expect(definition.pageBreakBefore({ headlineLevel: 2, startPosition: { verticalRatio: 0.5 } })).toBe(false);
    expect(definition.pageBreakBefore({ startPosition: { verticalRatio: 0.97 } })).toBe(false);
  });

  test("uses one font, drawn marks and lines, and no limb colour for a healthy pair", () => {
    expect(definition.defaultStyle.font).toBe("DejaVu");
    const drawings = nodes.flatMap((node) => (node.svg === undefined ? [] : [node.svg]));
    expect(drawings.length).toBeGreaterThan(4);
    expect(drawings.join()).not.toContain("<text");
    expect(drawings.join()).not.toContain("var(");
    const colours = walk(sheetPdfDefinition(buildSheet(healthySession(), defaultSettings)).content).map(
      (node) => `${node.color} ${node.svg}`,
    );
    expect(colours.join()).not.toMatch(/#9C2F5E|#1B6A70/i);
    expect(nodes.map((node) => node.color).join()).toContain("#9C2F5E");
  });
});
