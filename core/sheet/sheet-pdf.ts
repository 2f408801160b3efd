import type { SheetBlock, SheetDocument } from "./document.ts";
import { lightPalette } from "./palette.ts";
import type { PdfContent, PdfTableLayout, SheetPdfDefinition } from "./pdf-definition.ts";
import { pdfTable } from "./pdf-table.ts";

/** Points. A4 is 595.28 wide. */
const margins = { left: 38, top: 32, right: 38, bottom: 34 } as const;
/** Of running text in muted ink. */
const mutedSize = 7.4;
/** A heading lower than this part of the page goes to the next one, so that it never stands alone. */
const lowestHeading = 0.9;
const contentWidth = 595.28 - margins.left - margins.right;

/**
 * The sheet as a document definition for pdfmake: plain data and pure functions, A4, no clock. The host registers a
 * font called "DejaVu" (normal and bold) and sets the date of making.
 */
export function sheetPdfDefinition(sheet: SheetDocument): SheetPdfDefinition {
  return {
    pageSize: "A4",
    pageMargins: [margins.left, margins.top, margins.right, margins.bottom],
    language: sheet.language,
    displayTitle: true,
    info: { title: sheet.title, subject: sheet.subtitle, creator: "Counterpoise", producer: "Counterpoise" },
    defaultStyle: { font: "DejaVu", fontSize: 8, lineHeight: 1.1, color: lightPalette.ink },
    styles: {
      title: { fontSize: 15, bold: true },
      subtitle: { fontSize: 9, color: lightPalette.muted, margin: [0, 1, 0, 4] },
      heading2: { fontSize: 10.5, bold: true, margin: [0, 6, 0, 1] },
      heading3: { fontSize: 9, bold: true, margin: [0, 5, 0, 1] },
      caption: { bold: true },
      columnHeading: { fontSize: 7.2, color: lightPalette.muted },
      muted: { color: lightPalette.muted },
      running: { fontSize: 6.6, color: lightPalette.muted },
      runningBanner: { fontSize: 6.6, color: lightPalette.cautionInk },
    },
    content: [
      { text: sheet.title, style: "title" },
      { text: sheet.subtitle, style: "subtitle" },
      ...content(sheet.blocks),
    ],
    header: () => ({
      text: sheet.banner,
      style: "runningBanner",
      margin: [margins.left, 18, margins.right, 0],
    }),
    footer: (currentPage, pageCount) => ({
      columns: [
        { text: sheet.footer, style: "running" },
        { text: `${currentPage} / ${pageCount}`, style: "running", alignment: "right", width: 40 },
      ],
      margin: [margins.left, 12, margins.right, 0],
    }),
    pageBreakBefore: ({ headlineLevel, startPosition }) =>
      headlineLevel !== undefined && startPosition !== undefined && startPosition.verticalRatio > lowestHeading,
  };
}

/** Up to this many rows a table is moved to the next page rather than broken. */
const unbrokenRows = 5;

function staysWhole(each: SheetBlock | undefined): boolean {
  return each?.kind === "write-in" || (each?.kind === "table" && each.rows.length <= unbrokenRows);
}

/** The blocks in order; what is not to be broken stays with its heading. */
function content(blocks: readonly SheetBlock[]): readonly PdfContent[] {
  return blocks.flatMap((each, at): readonly PdfContent[] => {
    const startsPage = blocks[at - 1]?.kind === "page-break";
    const next = blocks[at + 1];
    if (each.kind === "heading" && next !== undefined && staysWhole(next)) {
      // Without its level: a page break put before a heading inside an unbreakable block would lose the block.
      const { headlineLevel: _level, ...heading } = block(each, startsPage);
      return [{ stack: [heading, block(next, false)], unbreakable: true }];
    }
    if (blocks[at - 1]?.kind === "heading" && staysWhole(each)) return [];
    const drawn = block(each, startsPage);
    return [staysWhole(each) ? { stack: [drawn], unbreakable: true } : drawn];
  });
}

function block(each: SheetBlock, startsPage: boolean): PdfContent {
  const start: Partial<PdfContent> = startsPage ? { pageBreak: "before" } : {};
  switch (each.kind) {
    case "heading":
      return { text: each.text, style: `heading${each.level}`, headlineLevel: each.level, ...start };
    case "paragraph":
      return { ...paragraph(each.text, each.tone), ...start };
    case "list":
      return {
        ul: each.items.map((item) => ({ text: item, margin: [0, 0, 0, 1.5] })),
        margin: [0, 1, 0, 2],
        ...(each.tone === "muted" && { fontSize: mutedSize, color: lightPalette.muted }),
        ...start,
      };
    case "facts":
      return { ...facts(each.items), ...start };
    case "write-in":
      return { ...writeIn(each.items), ...start };
    case "table":
      return { ...pdfTable(each), ...start };
    case "page-break":
      return { text: "", fontSize: 0.1 };
  }
}

function paragraph(text: string, tone: "plain" | "muted" | "caution"): PdfContent {
  if (tone !== "caution")
    return { text, ...(tone === "muted" && { style: "muted", fontSize: mutedSize }), margin: [0, 1, 0, 3] };
  return {
    table: { widths: ["*"], body: [[{ text, color: lightPalette.cautionInk, fillColor: lightPalette.cautionPaper }]] },
    layout: boxLayout,
    margin: [0, 2, 0, 4],
  };
}

const boxLayout: PdfTableLayout = {
  hLineWidth: () => 0,
  vLineWidth: () => 0,
  paddingLeft: () => 6,
  paddingRight: () => 6,
  paddingTop: () => 3.5,
  paddingBottom: () => 3.5,
};

const bareLayout: PdfTableLayout = {
  hLineWidth: () => 0,
  vLineWidth: () => 0,
  paddingLeft: () => 0,
  paddingRight: () => 8,
  paddingTop: () => 0.8,
  paddingBottom: () => 0.8,
};

type Fact = Extract<SheetBlock, { readonly kind: "facts" }>["items"][number];

/** Two facts a row; a wide one takes a row of its own. */
function facts(items: readonly Fact[]): PdfContent {
  const none: PdfContent = { text: "" };
  const pair = ({ name, value }: Fact): readonly PdfContent[] => [{ text: name, style: "muted" }, { text: value }];
  const rows: (readonly PdfContent[])[] = [];
  let open: readonly PdfContent[] | undefined;
  for (const item of items) {
    const [name = none, value = none] = pair(item);
    if (item.wide !== true && open !== undefined) {
      rows.push([...open, name, value]);
      open = undefined;
      continue;
    }
    if (open !== undefined) rows.push([...open, none, none]);
    open = item.wide === true ? undefined : [name, value];
    if (item.wide === true) rows.push([name, { ...value, colSpan: 3 }, none, none]);
  }
  if (open !== undefined) rows.push([...open, none, none]);
  return { table: { widths: [62, "*", 62, "*"], body: rows }, layout: bareLayout, margin: [0, 2, 0, 2] };
}

function writeIn(items: readonly { readonly name: string; readonly lines: number }[]): PdfContent {
  const rule = (width: number): PdfContent => ({
    canvas: [{ type: "line", x1: 0, y1: 14, x2: width, y2: 14, lineWidth: 0.6, lineColor: lightPalette.muted }],
    margin: [0, 0, 0, 1],
  });
  const field = (item: { readonly name: string; readonly lines: number }, width: number): PdfContent => ({
    stack: [{ text: item.name, style: "muted" }, ...Array.from({ length: item.lines }, () => rule(width))],
    width,
  });
  const tall = items.filter((item) => item.lines > 1);
  const short = items.filter((item) => item.lines === 1);
  const gap = 14;
  const width = (contentWidth - gap * (short.length - 1)) / Math.max(1, short.length);
  return {
    stack: [
      ...tall.map((item) => field(item, contentWidth)),
      { columns: short.map((item) => field(item, width)), columnGap: gap, margin: [0, 6, 0, 0] },
    ],
    unbreakable: true,
    margin: [0, 1, 0, 0],
  };
}
