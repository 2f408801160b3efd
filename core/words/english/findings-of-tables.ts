import type { TableFindings } from "../../ground/findings/table-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

const checkNames = "Check the column names; save the file as UTF-8 if they look wrong.";
const copyAgain = "Copy the file again if more of the recording is expected.";
const chooseRecording = "Choose a recording: rows of numbers with one row a sample.";
const lookAtColumns = "Look at one number of each column.";
const lookAtFile = "Look at the file if a sample could stand there.";
const sameColumns = "Export the recording again with the same columns in every row.";

/** What is said of a file of delimited text. */
export const findingsOfTables: FindingSentences<TableFindings> = {
  empty: () => ({ message: "The file is empty.", action: "Export the recording again." }),
  "not-data/no-text": () => ({ message: "The file is not text.", action: chooseRecording }),
  "not-data/no-rows": () => ({ message: "The text holds no rows of numbers.", action: chooseRecording }),

  "truncated/columns-missing": ({ line, fieldCount, columnCount }) => ({
    message: cutLine(line, `it has ${fieldCount} of ${columnCount} columns`),
    action: copyAgain,
  }),
  "truncated/last-cell": ({ line }) => ({
    message: cutLine(line, "its last cell may be incomplete"),
    action: copyAgain,
  }),
  "truncated/inside-character": () => ({
    message: "The file ends in the middle of a character.",
    action: copyAgain,
  }),
  "truncated/rows-stated": (figures) => ({
    message: `${countedRows(figures)}: ${figures.count - figures.rows} of ${figures.count} are missing.`,
    action: "Copy or export the file again if more of the recording is expected.",
  }),
  "rows-contradict": (figures) => ({
    message: `${countedRows(figures)}, ${figures.rows - figures.count} more.`,
    action: "Look at the file; its header may belong to another recording.",
  }),

  "encoding-guessed/no-mark": ({ encoding }) => ({
    message: `The file has no byte order mark; it was read as ${encoding}.`,
    action: checkNames,
  }),
  "encoding-guessed/not-as-marked": ({ line }) => ({
    message: `The file says that it is UTF-8, but line ${line} is not.`,
    action: checkNames,
  }),
  "encoding-guessed/not-utf-8": ({ line }) => ({
    message: `Line ${line} is not UTF-8; the file was read as Windows-1252.`,
    action: checkNames,
  }),

  "decimal-mark-unclear/two-readings": ({ cell, column, line }) => {
    const digits = cell.replace(/[^\d+-]/g, "");
    const decimal = cell.replace(",", ".");
    const place = line === undefined ? `column ${column}` : `column ${column}, line ${line}`;
    return {
      message: `"${cell}" in ${place} may be ${decimal} or ${digits}: no number of the column shows whether its mark starts the decimals or separates thousands.`,
      action: "State the decimal mark of this column, or export the recording again without thousands marks.",
    };
  },
  "decimal-mark-unclear/comma-twice": ({ line, nameCount, columnCount }) => ({
    message: `Line ${line} names ${nameCount} columns, but the commas of the rows make ${columnCount} of whole numbers: the comma seems to separate columns and decimals alike.`,
    action: "Export the recording again with semicolons or tabs between the columns, or with decimal points.",
  }),
  "decimal-marks-differ/from-stated": ({ stated, columns }) => ({
    message: `A decimal ${stated} was stated, but the numbers of ${columnNames(columns)} show a ${stated === "point" ? "comma" : "point"} and were read with it.`,
    action: lookAtColumns,
  }),
  "decimal-marks-differ/each-its-own": ({ point, comma }) => ({
    message: `Decimals start with a point in ${columnNames(point)} and with a comma in ${columnNames(comma)}; each column was read by its own.`,
    action: lookAtColumns,
  }),

  "columns-unclear/names-misfit": ({ line, nameCount, columnCount }) => ({
    message: `Line ${line} names ${nameCount} columns, but the rows have ${columnCount}; the names were not used.`,
    action: "Give every column one name, or state the columns.",
  }),
  "columns-unclear/other-width": ({ line, others, columnCount }) => ({
    message: `Line ${line}${andMore(others)} does not have the ${columnCount} columns of the other rows.`,
    action: sameColumns,
  }),
  "columns-unclear/other-width-left-out": ({ line, others, columnCount }) => ({
    message: `Line ${line}${andMore(others)} does not have the ${columnCount} columns of the other rows and was left out.`,
    action: sameColumns,
  }),
  "columns-unclear/widths-inside": ({ columnCount, odd, others }) => {
    const named = odd.map((each) => `line ${each.line} has ${each.fieldCount}`).join(", ");
    const columns = columnCount === 1 ? "1 column" : `${columnCount} columns`;
    const more = others > 0 ? ` and ${others} more lines differ` : "";
    return { message: `The rows have ${columns}, but ${named}${more}.`, action: sameColumns };
  },

  "lines-skipped/above-first-row": ({ line }) => ({
    message: `Line ${line}, right above the first row, is neither a row nor column names and was skipped.`,
    action: "Look at the file; a sample may be damaged there.",
  }),
  "lines-skipped/facts": ({ lines }) => ({
    message: `${lines.length === 1 ? "Line" : "Lines"} ${lines.join(", ")} above the column names ${lines.length === 1 ? "was" : "were"} not read as rows.`,
    action: lookAtFile,
  }),
  "lines-skipped/commented-rows": ({ line, others }) => ({
    message: `Line ${line}${andMore(others)} between the rows is marked as a comment but holds a row of numbers.`,
    action: "Export the recording again; a sample may be damaged or missing there.",
  }),
  "lines-skipped/summary": ({ line, label, others }) => ({
    message: `Line ${line} ("${label}")${andMore(others)} behind the last row is no sample and was left out.`,
    action: lookAtFile,
  }),
  "lines-skipped/no-sample": ({ line, others }) => ({
    message: `Line ${line}${andMore(others)} holds no sample and was skipped.`,
    action: lookAtFile,
  }),
};

function cutLine(line: number, why: string): string {
  return `The file ends in the middle of line ${line}: ${why}. The line was left out.`;
}

function countedRows({ line, key, value, rows }: TableFindings["rows-contradict"]): string {
  return `Line ${line} says "${key}: ${value}", but the file holds ${rows} rows`;
}

function andMore(others: number): string {
  return others > 0 ? ` and ${others} more` : "";
}

function columnNames(columns: readonly number[]): string {
  return `column${columns.length === 1 ? "" : "s"} ${columns.join(", ")}`;
}
