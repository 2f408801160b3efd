import type { SheetBlock, SheetCell, SheetColumn, SheetDocument, SymmetryLine } from "./document.ts";
import { sheetCss } from "./sheet-css.ts";
import { statusMarkSvg } from "./status-mark.ts";
import { type SymmetryLineColours, symmetryLineSvg } from "./symmetry-line.ts";

type Table = Extract<SheetBlock, { readonly kind: "table" }>;

const lineColours: SymmetryLineColours = {
  axis: "var(--line)",
  region: "var(--band)",
  tick: "var(--ink)",
  involved: "var(--involved)",
  ink: "var(--ink)",
  paper: "var(--surface)",
};

/**
 * The sheet as one self-contained HTML file: no script, nothing loaded from anywhere, prints on A4. Everything that
 * came from outside is escaped, and the content security policy forbids whatever might slip through.
 */
export function sheetHtml(sheet: SheetDocument): string {
  const pages = splitPages(sheet.blocks)
    .map((blocks) => `<section class="page">\n${blocks.map(block).join("\n")}\n</section>`)
    .join("\n");
  const banner = sheet.banner === "" ? "" : `<p class="banner">${escapeHtml(sheet.banner)}</p>\n`;
  return `<!doctype html>
<html lang="${sheet.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(sheet.title)}</title>
<style>
${sheetCss(sheet)}
</style>
</head>
<body>
<main>
<header>
${banner}<h1>${escapeHtml(sheet.title)}</h1>
<p class="subtitle">${escapeHtml(sheet.subtitle)}</p>
</header>
${pages}
<footer>${escapeHtml(sheet.footer)}</footer>
</main>
</body>
</html>
`;
}

/** Text made harmless between tags and inside quoted attributes. */
export function escapeHtml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

function splitPages(blocks: readonly SheetBlock[]): readonly (readonly SheetBlock[])[] {
  const pages: SheetBlock[][] = [[]];
  for (const each of blocks) {
    if (each.kind === "page-break") pages.push([]);
    else pages.at(-1)?.push(each);
  }
  return pages;
}

function block(each: SheetBlock): string {
  switch (each.kind) {
    case "heading":
      return `<h${each.level}>${escapeHtml(each.text)}</h${each.level}>`;
    case "paragraph":
      return `<p class="${each.tone}">${escapeHtml(each.text)}</p>`;
    case "list":
      return `<ul class="${each.tone}">${each.items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul>`;
    case "facts":
      return `<dl class="facts">${each.items.map(({ name, value, wide }) => `<div${wide === true ? ' class="wide"' : ""}><dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}</dd></div>`).join("")}</dl>`;
    case "write-in":
      return `<dl class="write-in">${each.items.map(writeIn).join("")}</dl>`;
    case "table":
      return table(each);
    case "page-break":
      return "";
  }
}

function writeIn({ name, lines }: { readonly name: string; readonly lines: number }): string {
  const line = '<span class="line"></span>';
  return `<div class="${lines > 1 ? "tall" : "short"}"><dt>${escapeHtml(name)}</dt><dd>${line.repeat(lines)}</dd></div>`;
}

function table(each: Table): string {
  const { axis } = each;
  const last = each.columns.length - 1;
  const headings = each.columns.map((column, at) => {
    const lineHeading = axis && at === last ? `<th scope="col" class="line">${escapeHtml(axis.label)}</th>` : "";
    const holdsStatus = each.rows.some(({ cells }) => cells[at]?.status !== undefined);
    return lineHeading + columnHeading(column, holdsStatus);
  });
  const rows = each.rows.map(({ cells, line }) => {
    const drawn = cells.map((cell, at) => {
      const lineCell = axis && at === last ? `<td class="line">${lineDrawing(line, axis)}</td>` : "";
      return lineCell + tableCell(cell, at === 0);
    });
    return `<tr>${drawn.join("")}</tr>`;
  });
  return `<div class="scroll"><table>
<caption${each.captionUnseen === true ? ' class="unseen"' : ""}>${escapeHtml(each.caption)}</caption>
<thead><tr>${headings.join("")}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table></div>`;
}

function columnHeading({ text, align, wide, limb }: SheetColumn, holdsStatus: boolean): string {
  const names = [align, ...(wide ? ["wide"] : []), ...(holdsStatus ? ["statuses"] : []), ...limbClass(limb)];
  return `<th scope="col" class="${names.join(" ")}">${escapeHtml(text)}</th>`;
}

function tableCell(cell: SheetCell, first: boolean): string {
  const tag = first ? "th" : "td";
  const names = [cell.align, ...(cell.emphasis ? [cell.emphasis] : []), ...limbClass(cell.limb)];
  const mark = cell.status === undefined ? "" : `${statusMarkSvg(cell.status, "currentColor", 13)} `;
  const short = cell.status !== undefined && (cell.muted?.length ?? 0) < shortWords;
  const behind =
    cell.muted === undefined ? "" : ` <span class="behind${short ? " short" : ""}">${escapeHtml(cell.muted)}</span>`;
  const word =
    cell.status === undefined ? escapeHtml(cell.text) : `<span class="status">${mark}${escapeHtml(cell.text)}</span>`;
  return `<${tag}${first ? ' scope="row"' : ""} class="${names.join(" ")}">${word}${behind}</${tag}>`;
}

/** Words behind a status up to this many characters stay on one line. */
const shortWords = 24;

function limbClass(limb: SheetCell["limb"]): readonly string[] {
  return limb === "involved" || limb === "uninvolved" ? [limb] : [];
}

function lineDrawing(line: SymmetryLine | undefined, axis: NonNullable<Table["axis"]>): string {
  return line === undefined ? "" : symmetryLineSvg(line, axis, lineColours);
}
