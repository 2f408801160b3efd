import { type Finding, finding } from "../finding.ts";
import type { Dialect } from "./dialect.ts";
import type { Header } from "./header.ts";
import type { LineIndex } from "./lines.ts";
import { parseNumberText } from "./number-text.ts";
import { type NumericBody, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { TextBytes } from "./text-bytes.ts";

/** The file stops inside a line. */
export function cutLine(line: number, why: string): Finding {
  return finding(
    "truncated",
    "warning",
    `The file ends in the middle of line ${line}: ${why}. The line was left out.`,
    "Copy the file again if more of the recording is expected.",
    { where: `line ${line}` },
  );
}

/** The file stops inside a UTF-16 character. */
export function cutCharacter(): Finding {
  return finding(
    "truncated",
    "warning",
    "The file ends in the middle of a character.",
    "Copy the file again if more of the recording is expected.",
    { where: "end of the file" },
  );
}

/** Says that the encoding was guessed, with the line that made it doubtful. */
export function encodingFindings(text: TextBytes, lines: LineIndex): Finding[] {
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

/** What is doubtful about the lines above the rows. */
export function headerFindings(
  header: readonly string[],
  dialect: Dialect,
  { misfit, doubtful }: Pick<Header, "misfit" | "doubtful">,
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
  const [firstStray] = strayRows;
  if (firstStray !== undefined) {
    findings.push(otherColumnCount(firstStray, strayRows.length, dialect, strayRows.length > 1));
  } else if (doubtful !== undefined) {
    findings.push(
      finding(
        "lines-skipped",
        "warning",
        `Line ${doubtful}, right above the first row, is neither a row nor column names and was skipped.`,
        "Look at the file; a sample may be damaged there.",
        { where: `line ${doubtful}` },
      ),
    );
  }
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

/** What is doubtful about the rows: other widths, a last line cut short, lines without numbers. */
export function bodyFindings(body: NumericBody, dialect: Dialect, lastLine: number): Finding[] {
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
