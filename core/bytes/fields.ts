import Papa from "papaparse";

export const delimiters = ["comma", "semicolon", "tab", "pipe", "spaces", "none"] as const;

export type Delimiter = (typeof delimiters)[number];

/** The character of each delimiter; runs of blanks and "none" have no single one. */
const delimiterCharacters = { comma: ",", semicolon: ";", tab: "\t", pipe: "|" } as const;

/** A name in quotes, a bracketed unit (which may follow its name after a blank), or a word. */
const blankSeparatedField = /"[^"]*"|[^\s("[]\S*|[([]\S*/g;

/** Cells of one line, as written, without quotes. PapaParse reads lines with quotes. */
export function splitFields(line: string, delimiter: Delimiter): string[] {
  if (delimiter === "none") return [unquoted(line)];
  if (delimiter === "spaces") {
    const trimmed = line.trim();
    // A no-break blank stands inside a number or a name, and other control characters are damage.
    return trimmed === "" ? [""] : trimmed.split(/[ \t]+/).map(unquoted);
  }
  const character = delimiterCharacters[delimiter];
  if (!line.includes('"')) return line.split(character);
  return [...(Papa.parse(line, { delimiter: character, newline: "\n" }).data[0] ?? [""])];
}

/**
 * Cells of a line of column names. Where blanks separate the columns, a bracketed unit belongs to the name before it,
 * and names of several words are told apart by wider gaps when that gives `expected` cells.
 */
export function splitNames(line: string, delimiter: Delimiter, expected: number): string[] {
  if (delimiter !== "spaces") return splitFields(line, delimiter).map(onOneLine);
  const wide = line
    .trim()
    .split(/\t+|\s{2,}/)
    .map(unquoted);
  if (wide.length === expected) return wide;
  const names: string[] = [];
  for (const [part] of line.matchAll(blankSeparatedField)) {
    if (/^[([]/.test(part) && names.length > 0) names.push(`${names.pop()} ${part}`);
    else names.push(unquoted(part));
  }
  return names;
}

/** True when a cell of the line is opened by a quote that the line does not close. */
export function hasOpenQuote(line: string): boolean {
  let quotes = 0;
  for (let index = line.indexOf('"'); index >= 0; index = line.indexOf('"', index + 1)) quotes++;
  return quotes % 2 === 1;
}

function onOneLine(name: string): string {
  return name.replace(/\s*\n\s*/g, " ").trim();
}

function unquoted(cell: string): string {
  const trimmed = cell.trim();
  return trimmed.length >= 2 && trimmed.startsWith('"') && trimmed.endsWith('"') ? trimmed.slice(1, -1) : trimmed;
}
