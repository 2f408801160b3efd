import type { SheetBlock, SheetDocument } from "../../../core/sheet/document.ts";

/** Every text of a sheet, block by block, as a reader would meet it: what joins units is not to be seen. */
export function sheetTexts(sheet: SheetDocument): readonly string[] {
  const texts = [sheet.title, sheet.subtitle, sheet.banner, ...sheet.blocks.flatMap(blockTexts), sheet.footer];
  return texts.map((text) => text.replaceAll("\u2060", ""));
}

function blockTexts(block: SheetBlock): readonly string[] {
  switch (block.kind) {
    case "heading":
    case "paragraph":
      return [block.text];
    case "list":
      return block.items;
    case "facts":
      return block.items.map(({ name, value }) => `${name}: ${value}`);
    case "write-in":
      return block.items.map(({ name }) => name);
    case "table":
      return [
        block.caption,
        block.columns.map((column) => column.text).join(" | "),
        ...block.rows.map(({ cells }) => cells.map((cell) => `${cell.text} ${cell.muted ?? ""}`.trim()).join(" | ")),
      ];
    case "page-break":
      return [];
  }
}

/** The blocks before the first page break: what athlete and surgeon read. */
export function firstPage(sheet: SheetDocument): SheetDocument {
  const end = sheet.blocks.findIndex((block) => block.kind === "page-break");
  return { ...sheet, blocks: sheet.blocks.slice(0, end) };
}

/** The rows of the table with a caption, cells as plain text. */
export function tableRows(sheet: SheetDocument, caption: string): readonly (readonly string[])[] {
  const table = sheet.blocks.find((block) => block.kind === "table" && block.caption === caption);
  if (table?.kind !== "table") throw new RangeError(`The sheet has no table "${caption}".`);
  return table.rows.map(({ cells }) =>
    cells.map((cell) => (cell.text + (cell.muted ? ` ${cell.muted}` : "")).trim().replaceAll("\u2060", "")),
  );
}
