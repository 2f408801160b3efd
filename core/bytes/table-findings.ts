import { type Finding, proseFinding } from "../ground/finding.ts";
import type { DecimalDoubt } from "./column-marks.ts";
import type { DetectedDialect, Dialect } from "./dialect.ts";
import type { Header } from "./header.ts";
import { lineNumberAt } from "./lines.ts";
import { isNumberInAnyMarks } from "./number-marks.ts";
import type { DecimalMark } from "./number-text.ts";
import { isCompleteRow, type NumericBody, type OddLine, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { TextBytes } from "./text-bytes.ts";

/** The file stops inside a line. */
export function cutLine(line: number, why: string): Finding {
  return proseFinding(
    "truncated",
    "warning",
    `The file ends in the middle of line ${line}: ${why}. The line was left out.`,
    "Copy the file again if more of the recording is expected.",
    { where: `line ${line}` },
  );
}

/** The file stops inside a UTF-16 character. */
export function cutCharacter(): Finding {
  return proseFinding(
    "truncated",
    "warning",
    "The file ends in the middle of a character.",
    "Copy the file again if more of the recording is expected.",
    { where: "end of the file" },
  );
}

/** Says that the encoding was guessed, with the line that made it doubtful. */
export function encodingFindings(text: TextBytes): Finding[] {
  if (text.encodingFrom === "pattern") {
    return [encodingGuessed(`The file has no byte order mark; it was read as ${text.encoding}.`, "the whole file")];
  }
  if (text.firstDoubtfulByte < 0) return [];
  const line = lineNumberAt(text.bytes, text.firstDoubtfulByte);
  const message =
    text.encoding === "UTF-8"
      ? `The file says that it is UTF-8, but line ${line} is not.`
      : `Line ${line} is not UTF-8; the file was read as Windows-1252.`;
  return [encodingGuessed(message, `line ${line}`)];
}

function encodingGuessed(message: string, where: string): Finding {
  return proseFinding(
    "encoding-guessed",
    "note",
    message,
    "Check the column names; save the file as UTF-8 if they look wrong.",
    { where },
  );
}

/** A mark may be a decimal or a thousands mark, and nothing in the file settles it. */
export function decimalMarkUnclear({ line, cell, column }: DecimalDoubt): Finding {
  const digits = cell.replace(/[^\d+-]/g, "");
  const decimal = cell.replace(",", ".");
  const place = line === 0 ? `column ${column + 1}` : `column ${column + 1}, line ${line}`;
  return proseFinding(
    "decimal-mark-unclear",
    "refusal",
    `"${cell}" in ${place} may be ${decimal} or ${digits}: no number of the column shows whether its mark starts the decimals or separates thousands.`,
    "State the decimal mark of this column (--decimal-mark point or comma; columns that show theirs keep it), or export the recording again without thousands marks.",
    { where: line === 0 ? `column ${column + 1}` : `line ${line}` },
  );
}

const markNames: Readonly<Record<DecimalMark, string>> = { point: "a point", comma: "a comma" };

/** Columns with different decimal marks, or none with the one that was stated. */
export function decimalMarkFindings({ dialect, againstStated }: DetectedDialect, stated?: DecimalMark): Finding[] {
  const columnsWith = (mark: DecimalMark): number[] =>
    dialect.marks.flatMap(({ decimal }, column) =>
      dialect.kinds[column] === "number" && decimal === mark ? [column + 1] : [],
    );
  const [point, comma] = [columnsWith("point"), columnsWith("comma")];
  if (stated !== undefined && againstStated.length > 0 && columnsWith(stated).length === 0) {
    const shown = stated === "point" ? "comma" : "point";
    return [
      marksDiffer(
        "warning",
        `${markNames[stated].replace("a ", "A decimal ")} was stated, but the numbers of ${columnNames(againstStated.map((column) => column + 1))} show ${markNames[shown]} and were read with it.`,
      ),
    ];
  }
  if (point.length === 0 || comma.length === 0) return [];
  return [
    marksDiffer(
      "note",
      `Decimals start with a point in ${columnNames(point)} and with a comma in ${columnNames(comma)}; each column was read by its own.`,
    ),
  ];
}

function marksDiffer(severity: "note" | "warning", message: string): Finding {
  return proseFinding("decimal-marks-differ", severity, message, "Look at one number of each column.");
}

function columnNames(columns: readonly number[]): string {
  return `column${columns.length === 1 ? "" : "s"} ${columns.join(", ")}`;
}

/** What is doubtful about the lines above the rows. */
export function headerFindings(
  header: readonly string[],
  dialect: Dialect,
  { misfit, doubtful }: Pick<Header, "misfit" | "doubtful">,
): Finding[] {
  const findings: Finding[] = [];
  if (misfit !== undefined) {
    findings.push(
      proseFinding(
        "columns-unclear",
        "warning",
        `Line ${misfit.line} names ${misfit.count} columns, but the rows have ${dialect.columnCount}; the names were not used.`,
        "Give every column one name, or state the columns (--columns time=1,left=2,right=3).",
        { where: `line ${misfit.line}` },
      ),
    );
  }
  const strayRows = header.flatMap((line, index) => (isOtherRow(line, dialect) ? [index + 1] : []));
  const [firstStray] = strayRows;
  if (firstStray !== undefined) {
    findings.push(otherColumnCount(firstStray, strayRows.length, dialect, strayRows.length > 1));
  } else if (doubtful !== undefined) {
    findings.push(
      proseFinding(
        "lines-skipped",
        "warning",
        `Line ${doubtful}, right above the first row, is neither a row nor column names and was skipped.`,
        "Look at the file; a sample may be damaged there.",
        { where: `line ${doubtful}` },
      ),
    );
  }
  const facts = header.flatMap((line, index) => (isRowOfWordAndNumber(line, dialect) ? [index + 1] : []));
  if (facts.length > 0) {
    const lines = facts.length === 1 ? `Line ${facts[0]}` : `Lines ${facts.join(", ")}`;
    findings.push(
      skipped(facts[0]!, `${lines} above the column names ${facts.length === 1 ? "was" : "were"} not read as rows.`),
    );
  }
  return findings;
}

/** Above the names of a table with a column of words, "mass;69,4" has the shape of a row. */
function isRowOfWordAndNumber(line: string, dialect: Dialect): boolean {
  if (!dialect.kinds.includes("text") || isCommentLine(line, dialect.delimiter)) return false;
  return isCompleteRow(rowFields(line, dialect), dialect);
}

/** A header line that is a row of numbers of another width: a recording before the recording. */
export function isOtherRow(line: string, dialect: Dialect): boolean {
  if (isBlankLine(line) || isCommentLine(line, dialect.delimiter)) return false;
  const fields = rowFields(line, dialect);
  return fields.length > 1 && fields.length !== dialect.columnCount && fields.every(isNumberInAnyMarks);
}

function otherColumnCount(line: number, count: number, dialect: Dialect, isRefused: boolean): Finding {
  const others = count > 1 ? ` and ${count - 1} more` : "";
  return proseFinding(
    "columns-unclear",
    isRefused ? "refusal" : "warning",
    `Line ${line}${others} does not have the ${dialect.columnCount} columns of the other rows${isRefused ? "" : " and was left out"}.`,
    "Export the recording again with the same columns in every row.",
    { where: `line ${line}` },
  );
}

/** No setting: it shortens a sentence. */
const linesNamed = 3;

/** Rows of another width inside the recording: a sample is missing or torn apart. */
function oddInside(odd: readonly OddLine[], dialect: Dialect): Finding {
  const named = odd.slice(0, linesNamed).map((each) => `line ${each.line} has ${each.fieldCount}`);
  const more = odd.length > linesNamed ? ` and ${odd.length - linesNamed} more lines differ` : "";
  const columns = dialect.columnCount === 1 ? "1 column" : `${dialect.columnCount} columns`;
  return proseFinding(
    "columns-unclear",
    "refusal",
    `The rows have ${columns}, but ${named.join(", ")}${more}.`,
    "Export the recording again with the same columns in every row.",
    { where: `line ${odd[0]!.line}` },
  );
}

/** A row that a comment mark takes out of the recording. */
function rowsBehindComments(odd: readonly OddLine[]): Finding {
  const others = odd.length > 1 ? ` and ${odd.length - 1} more` : "";
  return proseFinding(
    "lines-skipped",
    "refusal",
    `Line ${odd[0]!.line}${others} between the rows is marked as a comment but holds a row of numbers.`,
    "Export the recording again; a sample may be damaged or missing there.",
    { where: `line ${odd[0]!.line}` },
  );
}

/** A line behind the rows that says something in words. */
export function isWords(odd: OddLine): boolean {
  return odd.numberCount === 0 || odd.isComment || /^\s*"?\p{L}{2}/u.test(odd.text);
}

/** What is doubtful about the rows: other widths, a last line cut short, summaries, lines without numbers. */
export function bodyFindings(body: NumericBody, dialect: Dialect): Finding[] {
  const findings: Finding[] = [];
  const inside = body.oddLines.filter((odd) => odd.rowsBefore < body.rows);
  const commented = inside.filter((odd) => odd.isComment);
  const torn = inside.filter((odd) => !odd.isComment);
  if (torn.length > 0) findings.push(oddInside(torn, dialect));
  if (commented.length > 0) findings.push(rowsBehindComments(commented));
  const behind = body.oddLines.filter((odd) => odd.rowsBefore >= body.rows);
  const numbersBehind = behind.filter((odd) => !isWords(odd));
  const [onlyOdd] = numbersBehind;
  if (onlyOdd !== undefined) {
    const isLastLine = onlyOdd.line === body.lineCount || behind.at(-1) === onlyOdd;
    if (numbersBehind.length === 1 && isLastLine && onlyOdd.fieldCount < dialect.columnCount) {
      findings.push(cutLine(onlyOdd.line, `it has ${onlyOdd.fieldCount} of ${dialect.columnCount} columns`));
    } else {
      findings.push(otherColumnCount(onlyOdd.line, numbersBehind.length, dialect, numbersBehind.length > 1));
    }
  }
  const [summary] = body.summaryLines;
  if (summary !== undefined) {
    const others = body.summaryLines.length > 1 ? ` and ${body.summaryLines.length - 1} more` : "";
    findings.push(
      skipped(
        summary.line,
        `Line ${summary.line} ("${summary.label}")${others} behind the last row is no sample and was left out.`,
      ),
    );
  }
  const words = [
    ...behind.filter(isWords).map((odd) => odd.line),
    ...body.footerLines.map((footer) => footer.line),
    ...body.blankLinesInside,
  ].sort((one, other) => one - other);
  const [firstWords] = words;
  if (firstWords !== undefined) {
    const others = words.length > 1 ? ` and ${words.length - 1} more` : "";
    findings.push(skipped(firstWords, `Line ${firstWords}${others} holds no sample and was skipped.`));
  }
  return findings;
}

function skipped(line: number, message: string): Finding {
  return proseFinding("lines-skipped", "note", message, "Look at the file if a sample could stand there.", {
    where: `line ${line}`,
  });
}
