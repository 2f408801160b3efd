import { type Finding, finding, isRefused } from "../ground/finding.ts";
import { commaTwice } from "./comma-twice.ts";
import { detectDialect } from "./dialect.ts";
import { countDroppedRows } from "./dropped-rows.ts";
import { findFirstRow } from "./first-row.ts";
import { readHeader } from "./header.ts";
import { fieldsOfLine } from "./header-fields.ts";
import type { DecimalMark } from "./number-text.ts";
import { readBody } from "./numeric-body.ts";
import { countFindings } from "./stated-count.ts";
import type { Table } from "./table.ts";
import {
  bodyFindings,
  cutCharacter,
  decimalMarkFindings,
  decimalMarkUnclear,
  encodingFindings,
  headerFindings,
} from "./table-findings.ts";
import { readText } from "./text-bytes.ts";
import { lastCellMayBeCut } from "./truncation.ts";

/** A table as far as there is one, and everything doubtful about the text. */
export interface TableOutcome {
  /** Absent when the bytes hold no table at all. */
  readonly table?: Table;
  readonly findings: readonly Finding[];
}

/** What a person has said about how the numbers are written. */
interface StatedDialect {
  readonly decimalMark?: DecimalMark;
}

/**
 * Control characters no text file holds; more than this part of them means a binary file. No setting: it tells text
 * from other bytes, which leave nothing in between.
 */
const binaryShare = 0.01;

/** A binary file shows it at its beginning. No setting: it spares time. */
const binaryBytesLookedAt = 65536;

/** Reads any bytes as delimited text. Never throws; whatever is wrong is a finding. */
export function readTable(file: Uint8Array, stated: StatedDialect = {}): TableOutcome {
  const text = readText(file);
  if (isEmpty(text.bytes)) return { findings: [finding("empty", "refusal", {})] };
  if (isBinary(text.bytes)) return { findings: [finding("not-data/no-text", "refusal", {})] };
  const detected = detectDialect(text, stated.decimalMark);
  const start = detected === undefined ? undefined : findFirstRow(text, detected.dialect);
  if (detected === undefined || start === undefined) return { findings: [finding("not-data/no-rows", "refusal", {})] };
  const { dialect, doubt } = detected;

  const { header, first } = start;
  const { names, units, used, ...doubts } = readHeader(header, dialect);
  const body = readBody(text, first, dialect);
  const isCut = body.rows > 0 && lastCellMayBeCut(text, body, dialect);
  const rows = isCut ? body.rows - 1 : body.rows;
  const footer = [
    ...body.footerLines,
    ...body.summaryLines,
    ...body.oddLines.filter((odd) => odd.rowsBefore >= body.rows),
  ].sort((one, other) => one.line - other.line);
  const table: Table = {
    encoding: text.encoding,
    dialect,
    headerLines: header.length,
    header,
    headerFields: header.flatMap((line, index) =>
      used.has(index) ? [] : fieldsOfLine(line, index + 1, dialect.delimiter),
    ),
    footerFields: footer.flatMap((end) => fieldsOfLine(end.text, end.line, dialect.delimiter)),
    names,
    units,
    rows,
    rowsDropped: countDroppedRows(header, body, dialect, isCut),
    lineCount: body.lineCount,
    columns: body.columns.map((column) => column?.subarray(0, rows)),
    clocks: body.clocks.map((clock) => clock && { ...clock, seconds: clock.seconds.subarray(0, rows) }),
    texts: body.texts.map((cells) => cells && { ...cells, valueOfRow: cells.valueOfRow.subarray(0, rows) }),
    lineOfRow: body.lineOfRow.subarray(0, rows),
    unreadable: body.unreadable.filter((cell) => cell.row < rows),
  };
  const findings = [
    ...encodingFindings(text),
    ...headerFindings(header, dialect, doubts),
    ...decimalMarkFindings(detected, stated.decimalMark),
    ...commaTwice(dialect, doubts.misfit, table.columns),
    ...bodyFindings(body, dialect),
  ];
  if (isCut) {
    const line = body.lineOfRow[body.rows - 1]!;
    findings.push(finding("truncated/last-cell", "warning", { line }, { place: { at: "line", line } }));
  } else if (text.endsInsideCharacter) findings.push(cutCharacter());
  // Rows left out inside are refused already, with their lines.
  if (!isRefused(findings)) findings.push(...countFindings([...table.headerFields, ...table.footerFields], rows));
  if (doubt !== undefined) findings.push(decimalMarkUnclear(doubt));
  if (rows < 2) return { findings: [...findings, finding("not-data/no-rows", "refusal", {})] };
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
