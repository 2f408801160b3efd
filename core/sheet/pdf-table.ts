import type { SheetBlock, SheetCell, SheetColumn, SymmetryLine } from "./document.ts";
import { lightPalette } from "./palette.ts";
import type { PdfContent, PdfTableLayout } from "./pdf-definition.ts";
import { statusMarkSvg } from "./status-mark.ts";
import { type SymmetryLineColours, symmetryLineSize, symmetryLineSvg } from "./symmetry-line.ts";

type Table = Extract<SheetBlock, { readonly kind: "table" }>;

const lineColours: SymmetryLineColours = {
  axis: lightPalette.line,
  region: lightPalette.band,
  tick: lightPalette.ink,
  involved: lightPalette.involved,
  ink: lightPalette.ink,
  paper: lightPalette.surface,
};

/**
 * Hairlines between rows, a stronger one under the headings; the caption and the headings come again on a new page.
 * @param headerRows the caption and the headings, or the headings alone
 */
function tableLayout(headerRows: number): PdfTableLayout {
  return {
    hLineWidth: (row) => (row < headerRows ? 0 : row === headerRows ? 0.8 : 0.4),
    hLineColor: (row) => (row === headerRows ? lightPalette.muted : lightPalette.line),
    vLineWidth: () => 0,
    paddingLeft: (column) => (column === 0 ? 0 : 4),
    paddingRight: () => 4,
    paddingTop: () => 1.5,
    paddingBottom: () => 1.5,
  };
}

/** A table of the sheet for the PDF: marks and symmetry lines drawn, limbs in their colours. */
export function pdfTable(each: Table): PdfContent {
  const { axis } = each;
  const last = each.columns.length - 1;
  const widths = each.columns.flatMap((column, at): readonly (string | number)[] => {
    const width = column.wide ? "*" : "auto";
    return axis && at === last ? [symmetryLineSize.width, width] : [width];
  });
  const headings = each.columns.flatMap((column, at): readonly PdfContent[] =>
    axis && at === last
      ? [{ text: axis.label, style: "columnHeading" }, columnHeading(column)]
      : [columnHeading(column)],
  );
  const rows = each.rows.map(({ cells, line }) =>
    cells.flatMap((cell, at): readonly PdfContent[] =>
      axis && at === last ? [lineDrawing(line, axis), tableCell(cell)] : [tableCell(cell)],
    ),
  );
  const caption: PdfContent = { text: each.caption, style: "caption", colSpan: widths.length };
  const spanned = Array.from({ length: widths.length - 1 }, (): PdfContent => ({ text: "" }));
  const header = each.captionUnseen === true ? [headings] : [[caption, ...spanned], headings];
  return {
    table: {
      headerRows: header.length,
      keepWithHeaderRows: 2,
      dontBreakRows: true,
      widths,
      body: [...header, ...rows],
    },
    layout: tableLayout(header.length),
    fontSize: 7.8,
    margin: [0, 2, 0, 4],
  };
}

function columnHeading({ text, align, limb }: SheetColumn): PdfContent {
  return { text, style: "columnHeading", alignment: alignment(align), ...limbColour(limb) };
}

function tableCell(cell: SheetCell): PdfContent {
  const word = { text: cell.text, ...(cell.emphasis === "strong" && { bold: true }) };
  const behind = { color: lightPalette.muted, fontSize: 7.2 } as const;
  if (cell.status !== undefined) {
    return {
      columns: [
        { svg: statusMarkSvg(cell.status, lightPalette.ink, 9), width: 9, margin: [0, 0.5, 0, 0] },
        {
          stack: [
            { ...word, noWrap: true },
            ...(cell.muted === undefined ? [] : [{ ...behind, text: cell.muted, noWrap: cell.muted.length < 24 }]),
          ],
          width: "auto",
        },
      ],
      columnGap: 3,
    };
  }
  return {
    text: [word, ...(cell.muted === undefined ? [] : [{ ...behind, text: `${gapBefore(cell.muted)}${cell.muted}` }])],
    alignment: alignment(cell.align),
    ...(cell.align === "end" && { noWrap: true }),
    ...(cell.emphasis === "muted" && { color: lightPalette.muted }),
    ...limbColour(cell.limb),
  };
}

/** A unit stays on the line of the word it stands behind. */
function gapBefore(muted: string): string {
  return muted.length <= longestUnit && !muted.includes(" ") ? "\u00a0" : " ";
}

/** Characters of "N·s/kg" with its word joiner. */
const longestUnit = 7;

function alignment(align: "start" | "end"): "left" | "right" {
  return align === "start" ? "left" : "right";
}

function limbColour(limb: SheetCell["limb"]): Partial<PdfContent> {
  if (limb === "involved") return { color: lightPalette.involved };
  return limb === "uninvolved" ? { color: lightPalette.uninvolved } : {};
}

function lineDrawing(line: SymmetryLine | undefined, axis: NonNullable<Table["axis"]>): PdfContent {
  return line === undefined
    ? { text: "" }
    : { svg: symmetryLineSvg(line, axis, lineColours), width: symmetryLineSize.width, margin: [0, -3, 0, -4] };
}
