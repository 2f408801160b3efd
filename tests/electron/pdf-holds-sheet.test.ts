import { expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import { buildSheet } from "../../core/sheet/build-sheet.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import { makeSheetPdf } from "../../electron/pdf/make-pdf.ts";
import { analyzeSamples } from "../core/simulated/session.ts";
import { pdfText } from "./pdf-text.ts";

const sessions = [
  "aila-rusten/1-first-session",
  "aila-rusten/2-second-session",
  "jonas-ekre/1-month-6",
  "jonas-ekre/2-month-9",
  "maren-tveitlund/1-pre-injury",
  "maren-tveitlund/2-month-4",
  "maren-tveitlund/3-month-5-5",
  "maren-tveitlund/4-month-7",
  "maren-tveitlund/5-month-9",
  "maren-tveitlund/6-month-11",
];

/** A page with less than a line of text beside its running lines is empty. */
const leastLetters = 40;

/** Letters and digits only: the PDF breaks lines and cells where it must. */
const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, "");

/** Every text that stands in a cell, a heading or a caption of the sheet. */
function textsOf(sheet: SheetDocument): readonly string[] {
  return sheet.blocks.flatMap((block) => {
    if (block.kind === "heading" || block.kind === "paragraph") return [block.text];
    if (block.kind !== "table") return [];
    return [
      ...(block.captionUnseen === true ? [] : [block.caption]),
      ...block.rows.flatMap((row) => row.cells.map((cell) => cell.text)),
    ];
  });
}

// A table was once lost where a heading inside an unbreakable block asked for a new page.
test.each(sessions)("The PDF of %s holds every text of the sheet, and no page is empty", async (folder) => {
  const sheet = buildSheet(analyzeSamples(folder).result, defaultSettings);
  const pages = await pdfText(await makeSheetPdf(sheet));
  // A paragraph may go on behind the running lines at the foot and the head of a page.
  const bodies = pages.map((page, at) =>
    bare(page)
      .replace(bare(sheet.banner), "")
      .replace(bare(`${sheet.footer}${at + 1}${pages.length}`), ""),
  );
  const all = bodies.join("");
  expect(textsOf(sheet).filter((text) => !all.includes(bare(text)))).toEqual([]);
  for (const body of bodies) expect(body.length).toBeGreaterThan(leastLetters);
  // The plain answer with its criteria, nine of them at most here, and the clinician's lines fit on one page of A4.
  expect(bodies[0]).toContain("DecisionNameDateSignature");
  expect(bodies[1]?.startsWith("Numbersandhowsuretheyare")).toBe(true);
});
