import { type Finding, finding } from "../finding.ts";
import { type Dialect, detectDialect } from "./dialect.ts";
import { readHeader } from "./header.ts";
import { findLines, type LineIndex } from "./lines.ts";
import { isMissing, parseNumberText } from "./number-text.ts";
import { readBody, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { Table } from "./table.ts";
import { bodyFindings, cutCharacter, cutLine, encodingFindings, headerFindings } from "./table-findings.ts";
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
  const { names, units, ...doubts } = readHeader(header, dialect);
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
    ...headerFindings(header, dialect, doubts),
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
