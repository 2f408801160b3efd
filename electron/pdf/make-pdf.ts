import { join } from "node:path";
import pdfmake from "pdfmake";
import type { SheetDocument } from "../../core/sheet/document.ts";
import { sheetPdfDefinition } from "../../core/sheet/sheet-pdf.ts";
import { fontsFolder } from "../program/program-folders.ts";

/**
 * The moment a PDF claims to be made at. The sheet says when the athlete was tested; the clock of the machine that
 * printed it would only make equal documents differ.
 */
const fixedMoment = new Date(Date.UTC(2000, 0, 1));

/** The sheet as PDF. The same document gives the same bytes on every run, from the window and from the command line. */
export async function makeSheetPdf(sheet: SheetDocument): Promise<Uint8Array> {
  prepare();
  const definition = sheetPdfDefinition(sheet);
  const info = { ...definition.info, creationDate: fixedMoment };
  return new Uint8Array(await pdfmake.createPdf({ ...definition, info }).getBuffer());
}

let prepared = false;

function prepare(): void {
  if (prepared) return;
  const font = (name: string) => join(fontsFolder(), `${name}.ttf`);
  const files = new Set(["DejaVuSans", "DejaVuSans-Bold", "DejaVuSans-Oblique", "DejaVuSans-BoldOblique"].map(font));
  pdfmake.addFonts({
    DejaVu: {
      normal: font("DejaVuSans"),
      bold: font("DejaVuSans-Bold"),
      italics: font("DejaVuSans-Oblique"),
      bolditalics: font("DejaVuSans-BoldOblique"),
    },
  });
  // A document may reach the four font files and nothing else, neither on this machine nor elsewhere.
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => files.has(path));
  prepared = true;
}
