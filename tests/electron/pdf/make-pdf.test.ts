import { createHash } from "node:crypto";
import { inflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import type { SheetDocument } from "../../../core/sheet/document.ts";
import { makeSheetPdf } from "../../../electron/pdf/make-pdf.ts";

const sheet: SheetDocument = {
  title: "Testing sheet: Łukasz Ødegård",
  subtitle: "14 October 2026 · month 7",
  language: "en",
  banner: "Simulated recordings of an invented athlete.",
  blocks: [
    { kind: "heading", level: 2, text: "Sides" },
    { kind: "paragraph", text: "Impulse in N·s, ± one standard uncertainty, 26.6 ≤ 28 cm.", tone: "plain" },
    {
      kind: "table",
      caption: "Symmetry",
      columns: [{ text: "Measure", align: "start" }],
      rows: [{ cells: [{ text: "Jump height", align: "start" }] }],
    },
  ],
  footer: "Counterpoise 0.1.0",
};

const hash = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const latin = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

describe("the sheet as PDF", () => {
  test("the same sheet gives the same bytes, also after another one and at another time", async () => {
    const first = await makeSheetPdf(sheet);
    const other = await makeSheetPdf({ ...sheet, title: "Another" });
    await new Promise((resolve) => setTimeout(resolve, 1100));
    const again = await makeSheetPdf(sheet);
    expect(hash(again)).toBe(hash(first));
    expect(hash(other)).not.toBe(hash(first));
  });

  test("is a PDF that names its title and carries no date of this machine", async () => {
    const text = latin(await makeSheetPdf(sheet));
    expect(text.startsWith("%PDF-")).toBe(true);
    expect(text.trimEnd().endsWith("%%EOF")).toBe(true);
    const dates = [...text.matchAll(/\(D:(\d+)Z?\)/g)].map((match) => match[1]);
    expect(dates).toEqual(["20000101000000"]);
  });

  test("carries its own fonts, so that it prints alike everywhere", async () => {
    const text = latin(await makeSheetPdf(sheet));
    expect(text).toMatch(/\/BaseFont \/[A-Z]+\+DejaVuSans\b/);
    expect(text).toMatch(/\/BaseFont \/[A-Z]+\+DejaVuSans-Bold\b/);
    expect(text).toContain("/FontFile2");
    expect(text).not.toMatch(/\/BaseFont \/Helvetica/);
  });

  test("keeps letters beyond English as text that can be searched and copied", async () => {
    const bytes = Buffer.from(await makeSheetPdf(sheet));
    // The character maps list every letter used by its Unicode number: Ł is 0141, Ø 00d8, ≤ 2264, · 00b7.
    const maps = inflatedStreams(bytes).filter(
      (stream) => stream.includes("beginbfrange") || stream.includes("beginbfchar"),
    );
    for (const number of ["0141", "00d8", "2264", "00b7"]) {
      expect(
        maps.some((map) => map.toLowerCase().includes(`<${number}>`)),
        number,
      ).toBe(true);
    }
  });
});

function inflatedStreams(bytes: Buffer): readonly string[] {
  const found: string[] = [];
  for (let at = bytes.indexOf("stream\n"); at >= 0; at = bytes.indexOf("stream\n", at + 1)) {
    if (bytes.subarray(at - 3, at).toString("latin1") === "end") continue;
    const end = bytes.indexOf("\nendstream", at);
    try {
      found.push(inflateSync(bytes.subarray(at + 7, end)).toString("latin1"));
    } catch {
      // A stream that is not deflated is of no interest here.
    }
  }
  return found;
}
