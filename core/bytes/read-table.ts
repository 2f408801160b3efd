import { type Finding, finding } from "../finding.ts";
import { type Dialect, detectDialect } from "./dialect.ts";
import { readHeader } from "./header.ts";
import { findLines, type LineIndex } from "./lines.ts";
import { isMissing, parseNumberText } from "./number-text.ts";
import { type NumericBody, readBody, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { Table } from "./table.ts";
import { readText, type TextBytes, textBetween } from "./text-bytes.ts";
import { lastCellMayBeCut } from "./truncation.ts";

/** A table as far as there is one, and everything doubtful about the text. */
export interface TableOutcome {
  /** Absent when the bytes hold no table at all. */
  readonly table?: Table;
  readonly findings: readonly Finding[];
}

/** Control characters no text file holds; more than this part of them means a binary file. */
const binaryShare = 0.01;

/** A binary file shows it at its beginning. */
const binaryBytesLookedAt = 65536;

/** Reads any bytes as delimited text. Never throws; whatever is wrong is a finding. */
export function readTable(file: Uint8Array): TableOutcome {
  const text = readText(file);
  const lines = findLines(text.bytes);
  if (isEmpty(text.bytes)) return { findings: [emptyFile()] };
  if (isBinary(text.bytes)) return { findings: [notData("The file is not text.")] };
  const dialect = detectDialect(text, lines);
  const firstRow = dialect === undefined ? -1 : findFirstRow(text, lines, dialect);
  if (dialect === undefined || firstRow < 0) return { findings: [notData("The text holds no rows of numbers.")] };

  const header = Array.from({ length: firstRow }, (_, index) => lineText(text, lines, index));
  const { names, units, misfit } = readHeader(header, dialect);
  const body = readBody(text, lines, firstRow, dialect);
  const isCut = body.rows > 0 && lastCellMayBeCut(text, lines, body, dialect);
  const rows = isCut ? body.rows - 1 : body.rows;
  const table: Table = {
    encoding: text.encoding,
    dialect,
    headerLines: firstRow,
    header,
    names,
    units,
    rows,
    columns: body.columns.map((column) => column?.subarray(0, rows)),
    lineOfRow: body.lineOfRow.subarray(0, rows),
    unreadable: body.unreadable.filter((cell) => cell.row < rows),
  };
  const findings = [
    ...encodingFindings(text, lines),
    ...headerFindings(header, dialect, misfit),
    ...bodyFindings(body, dialect, lines.count),
  ];
  if (isCut) findings.push(cutLine(body.lineOfRow[body.rows - 1]!, "its last number may be incomplete"));
  else if (text.endsInsideCharacter) findings.push(cutCharacter());
  if (rows < 2) return { findings: [...findings, notData("The text holds no rows of numbers.")] };
  return { table, findings };
}

function isEmpty(bytes: Uint8Array): boolean {
  let index = 0;
  while (index < bytes.length && isBlankByte(bytes[index]!)) index++;
  return index === bytes.length;
}

function isBlankByte(byte: number): boolean {
  return byte === 32 || (byte >= 9 && byte <= 13);
}

function isBinary(bytes: Uint8Array): boolean {
  const looked = Math.min(bytes.length, binaryBytesLookedAt);
  let controls = 0;
  for (let index = 0; index < looked; index++) {
    const byte = bytes[index]!;
    // 26 and 27 (end of file under DOS, escape) do occur in text.
    if (byte < 32 && !isBlankByte(byte) && byte !== 26 && byte !== 27) controls++;
  }
  return controls > binaryShare * looked;
}

function lineText(text: TextBytes, lines: LineIndex, index: number): string {
  return textBetween(text, lines.starts[index]!, lines.ends[index]!);
}

/** Index of the first line that is a row and is followed by another; -1 where there is none. */
function findFirstRow(text: TextBytes, lines: LineIndex, dialect: Dialect): number {
  let previous = -1;
  for (let index = 0; index < lines.count; index++) {
    const line = lineText(text, lines, index);
    if (isBlankLine(line) || isCommentLine(line)) continue;
    const isRow = isNumericRow(line, dialect);
    if (isRow && previous >= 0) return previous;
    previous = isRow ? index : -1;
  }
  return -1;
}

/** A row has the right number of cells, a number in one of its number columns and nothing but gaps in the others. */
function isNumericRow(line: string, dialect: Dialect): boolean {
  const fields = rowFields(line, dialect);
  if (fields.length !== dialect.columnCount) return false;
  let numbers = 0;
  for (const [position, field] of fields.entries()) {
    if (!dialect.isNumeric[position]) continue;
    if (!Number.isNaN(parseNumberText(field, dialect.decimalMark))) numbers++;
    else if (!isMissing(field)) return false;
  }
  return numbers > 0;
}

function emptyFile(): Finding {
  return finding("empty", "refusal", "The file is empty.", "Export the recording again.");
}

function notData(message: string): Finding {
  return finding("not-data", "refusal", message, "Choose a recording: rows of numbers with one row a sample.");
}

function cutLine(line: number, why: string): Finding {
  return finding(
    "truncated",
    "warning",
    `The file ends in the middle of line ${line}: ${why}. The line was left out.`,
    "Copy the file again if more of the recording is expected.",
    { where: `line ${line}` },
  );
}

function cutCharacter(): Finding {
  return finding(
    "truncated",
    "warning",
    "The file ends in the middle of a character.",
    "Copy the file again if more of the recording is expected.",
    { where: "end of the file" },
  );
}

function encodingFindings(text: TextBytes, lines: LineIndex): Finding[] {
  if (text.firstDoubtfulByte < 0) return [];
  let line = 1;
  while (line < lines.count && lines.starts[line]! <= text.firstDoubtfulByte) line++;
  const message =
    text.encoding === "UTF-8"
      ? `The file says that it is UTF-8, but line ${line} is not.`
      : `Line ${line} is not UTF-8; the file was read as Windows-1252.`;
  return [
    finding("encoding-guessed", "note", message, "Check the column names; save the file as UTF-8 if they look wrong.", {
      where: `line ${line}`,
    }),
  ];
}

function headerFindings(
  header: readonly string[],
  dialect: Dialect,
  misfit: { readonly line: number; readonly count: number } | undefined,
): Finding[] {
  const findings: Finding[] = [];
  if (misfit !== undefined) {
    findings.push(
      finding(
        "columns-unclear",
        "warning",
        `Line ${misfit.line} names ${misfit.count} columns, but the rows have ${dialect.columnCount}; the names were not used.`,
        "Give every column one name, or state the columns (--columns time=1,left=2,right=3).",
        { where: `line ${misfit.line}` },
      ),
    );
  }
  const strayRows = header.flatMap((line, index) => (isOtherRow(line, dialect) ? [index + 1] : []));
  if (strayRows.length > 0)
    findings.push(otherColumnCount(strayRows[0]!, strayRows.length, dialect, strayRows.length > 1));
  return findings;
}

/** A header line that is a row of numbers of another width: a recording before the recording. */
function isOtherRow(line: string, dialect: Dialect): boolean {
  if (isBlankLine(line) || isCommentLine(line)) return false;
  const fields = rowFields(line, dialect);
  return (
    fields.length > 1 &&
    fields.length !== dialect.columnCount &&
    fields.every((field) => !Number.isNaN(parseNumberText(field, dialect.decimalMark)))
  );
}

function otherColumnCount(line: number, count: number, dialect: Dialect, isRefused: boolean): Finding {
  const others = count > 1 ? ` and ${count - 1} more` : "";
  return finding(
    "columns-unclear",
    isRefused ? "refusal" : "warning",
    `Line ${line}${others} does not have the ${dialect.columnCount} columns of the other rows${isRefused ? "" : " and was left out"}.`,
    "Export the recording again with the same columns in every row.",
    { where: `line ${line}` },
  );
}

function bodyFindings(body: NumericBody, dialect: Dialect, lastLine: number): Finding[] {
  const findings: Finding[] = [];
  const inside = body.oddLines.filter((odd) => odd.rowsBefore < body.rows);
  const behind = body.oddLines.filter((odd) => odd.rowsBefore >= body.rows);
  const numbersBehind = behind.filter((odd) => odd.numberCount > 0);
  if (inside.length > 0) findings.push(otherColumnCount(inside[0]!.line, inside.length, dialect, true));
  const [onlyOdd] = numbersBehind;
  if (onlyOdd !== undefined) {
    const isLastLine = onlyOdd.line === lastLine || behind.at(-1) === onlyOdd;
    if (numbersBehind.length === 1 && isLastLine && onlyOdd.fieldCount < dialect.columnCount) {
      findings.push(cutLine(onlyOdd.line, `it has ${onlyOdd.fieldCount} of ${dialect.columnCount} columns`));
    } else {
      findings.push(otherColumnCount(onlyOdd.line, numbersBehind.length, dialect, numbersBehind.length > 1));
    }
  }
  const skipped = [
    ...behind.filter((odd) => odd.numberCount === 0).map((odd) => odd.line),
    ...body.footerLines,
    ...body.blankLinesInside,
  ].sort((one, other) => one - other);
  if (skipped.length > 0) {
    const others = skipped.length > 1 ? ` and ${skipped.length - 1} more` : "";
    findings.push(
      finding(
        "lines-skipped",
        "note",
        `Line ${skipped[0]}${others} holds no numbers and was skipped.`,
        "Look at the file if a sample could stand there.",
        { where: `line ${skipped[0]}` },
      ),
    );
  }
  return findings;
}
