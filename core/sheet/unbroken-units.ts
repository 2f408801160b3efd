import type { SheetBlock, SheetCell, SheetDocument } from "./document.ts";

/** Between a slash and the rest of a unit: the line may not break there, and nothing is to be seen. */
const wordJoiner = "\u2060";

/** A slash inside a unit: m/s, m/s², N/s, N/m, N/kg, W/kg, N·s/kg. */
const unitSlash = /(?<=(?<!\p{L})[mNWs])\/(?=(?:kg|m|s)(?!\p{L}))/gu;

/** The sheet with units that stay on one line: "m/s" is never broken behind its slash, whatever draws it. */
export function withUnbrokenUnits(sheet: SheetDocument): SheetDocument {
  return { ...sheet, blocks: sheet.blocks.map(blockUnbroken) };
}

function unbroken(text: string): string {
  return text.replace(unitSlash, `/${wordJoiner}`);
}

function blockUnbroken(block: SheetBlock): SheetBlock {
  switch (block.kind) {
    case "heading":
    case "paragraph":
      return { ...block, text: unbroken(block.text) };
    case "list":
      return { ...block, items: block.items.map(unbroken) };
    case "facts":
      return { ...block, items: block.items.map((item) => ({ ...item, value: unbroken(item.value) })) };
    case "table":
      return {
        ...block,
        columns: block.columns.map((column) => ({ ...column, text: unbroken(column.text) })),
        rows: block.rows.map((row) => ({ ...row, cells: row.cells.map(cellUnbroken) })),
      };
    case "write-in":
    case "page-break":
      return block;
  }
}

function cellUnbroken(cell: SheetCell): SheetCell {
  return {
    ...cell,
    text: unbroken(cell.text),
    ...(cell.muted === undefined ? {} : { muted: unbroken(cell.muted) }),
  };
}
