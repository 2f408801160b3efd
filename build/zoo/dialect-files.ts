import type { WrittenEncoding } from "./encode-text.ts";
import { shortRows, wholeRows } from "./small-jump.ts";
import { cellsOf, forceColumn, plainColumns, timeColumn, type ZooColumn } from "./table-columns.ts";
import { tableFile, type Writing } from "./write-table.ts";
import type { ZooFile } from "./zoo-file.ts";

const ways: readonly (Writing & { readonly called: string })[] = [
  { called: "comma-point", delimiter: ",", decimalMark: "." },
  { called: "comma-quoted-comma", delimiter: ",", decimalMark: ",", quotes: true },
  { called: "semicolon-point", delimiter: ";", decimalMark: "." },
  { called: "semicolon-comma", delimiter: ";", decimalMark: "," },
  { called: "tab-point", delimiter: "\t", decimalMark: "." },
  { called: "tab-comma", delimiter: "\t", decimalMark: "," },
  { called: "pipe-point", delimiter: "|", decimalMark: "." },
  { called: "pipe-comma", delimiter: "|", decimalMark: "," },
  { called: "blanks-point", delimiter: " ", separator: "   ", decimalMark: "." },
  { called: "blanks-comma", delimiter: " ", separator: "  ", decimalMark: "," },
];

const encodings: readonly WrittenEncoding[] = [
  "UTF-8",
  "UTF-8 with mark",
  "UTF-16 little",
  "UTF-16 big",
  "Windows-1252",
];
const lineEnds = ["\n", "\r\n", "\r"] as const;
const lineEndNames = { "\n": "lf", "\r\n": "crlf", "\r": "cr" } as const;

/** Every delimiter with every decimal mark, each in three encodings and with every line end once. */
function everyDialect(): readonly ZooFile[] {
  return ways.flatMap(({ called, ...way }, index) =>
    lineEnds.map((lineEnd, turn) => {
      const encoding = encodings[(index + 2 * turn) % encodings.length]!;
      const isOld = encoding === "Windows-1252";
      const ending = `${encoding.toLowerCase().replaceAll(" ", "-")}-${lineEndNames[lineEnd]}`;
      return tableFile(
        `${called}-${ending}.txt`,
        plainColumns(shortRows),
        { ...way, encoding, lineEnd, above: [`Trial${way.delimiter === " " ? ": " : "="}préparée à la main`] },
        { findings: isOld ? ["encoding-guessed:note"] : [] },
      );
    }),
  );
}

/** Forces of four digits and more, where a thousands mark shows; millinewtons would show it, newtons do here. */
const heavy = (rows: number) => [
  timeColumn("time (s)", rows),
  forceColumn("left (N)", "left", rows),
  forceColumn("right (N)", "right", rows),
];

function thousandsMarks(): readonly ZooFile[] {
  const marks: readonly (Writing & { readonly called: string })[] = [
    { called: "thousands-point", delimiter: ";", decimalMark: ",", thousands: "." },
    { called: "thousands-comma", delimiter: ";", decimalMark: ".", thousands: "," },
    { called: "thousands-comma-quoted", delimiter: ",", decimalMark: ".", thousands: ",", quotes: true },
    { called: "thousands-apostrophe", delimiter: "\t", decimalMark: ".", thousands: "'" },
    { called: "thousands-blank", delimiter: ";", decimalMark: ",", thousands: " " },
    { called: "thousands-no-break", delimiter: "\t", decimalMark: ",", thousands: "\u00a0" },
  ];
  return marks.map(({ called, ...way }) => tableFile(`${called}.csv`, heavy(wholeRows), way));
}

const threeDecimals = (decimals: number) => [
  timeColumn("time", 120, { unit: "ms", rateHz: 100, perSecond: 1000, decimals: 0 }),
  forceColumn("left (kN)", "left", 120, { factor: 1000, decimals, unit: "kN" }),
];

/** Time and forces in the marks of different programs: ten rows a thousandth apart stand in each second. */
function mixedMarks(): readonly ZooFile[] {
  const rows = 2200;
  const columns = (from: number): readonly ZooColumn[] => [
    {
      name: "Time [s]",
      role: "time",
      unit: "s",
      cells: cellsOf(rows, (row) => (from + row / 1000).toFixed(3)),
    },
    forceColumn("Left [N]", "left", rows),
    forceColumn("Right [N]", "right", rows),
  ];
  const differ = { rateHz: 1000, findings: ["decimal-marks-differ:note"] } as const;
  const pointTime: Writing = { delimiter: ";", decimalMark: ",", decimalMarks: [".", ",", ","] };
  const commaTime: Writing = { delimiter: ";", decimalMark: ".", decimalMarks: [",", ".", "."] };
  return [
    tableFile("marks-time-point-forces-comma.csv", columns(0), pointTime, differ),
    tableFile("marks-time-comma-forces-point.csv", columns(0), commaTime, differ),
    tableFile(
      "marks-time-point-quoted-comma.csv",
      columns(0),
      { delimiter: ",", decimalMark: ",", decimalMarks: [".", ",", ","], quotes: true },
      differ,
    ),
    // From 5 s on no stamp shows that its point starts decimals, and what the forces show is no longer proof.
    tableFile("marks-time-unclear-forces-comma.csv", columns(5), pointTime, {
      outcome: "asks",
      findings: ["decimal-mark-unclear:refusal"],
      answers: { decimalMark: "point" },
      answeredFindings: ["decimal-marks-differ:note"],
      rateHz: 1000,
    }),
    // Forces in whole newtons, a point before the last three digits from 1000 N on.
    tableFile(
      "marks-whole-newtons-grouped.csv",
      [timeColumn("Zeit [s]", wholeRows), { ...forceColumn("Kraft links [N]", "left", wholeRows, { decimals: 0 }) }],
      { delimiter: ";", decimalMark: ",", thousands: "." },
    ),
  ];
}

/** Forms of numbers and rows beyond delimiter and mark. */
function otherForms(): readonly ZooFile[] {
  const short = plainColumns(shortRows);
  const exponents = short.map((column) => ({
    ...column,
    cells: column.cells.map((cell) => Number(cell).toExponential(5)),
  }));
  const noZero = short.map((column) => ({ ...column, cells: column.cells.map((cell) => cell.replace(/^0\./, ".")) }));
  const signed = short.map((column) => ({ ...column, cells: column.cells.map((cell) => `+${cell}`) }));
  return [
    tableFile("blank-behind-comma.csv", short, { separator: ", " }),
    tableFile("trailing-delimiter.csv", short, { delimiter: ";", trailingDelimiter: true }),
    tableFile("exponents.tsv", exponents, { delimiter: "\t" }),
    tableFile("no-zero-before-point.csv", noZero),
    tableFile("plus-signs.csv", signed, { delimiter: ";" }),
    tableFile("quoted-points.csv", short, { quotes: true, lineEnd: "\r\n" }),
    tableFile("unclosed-last-line.csv", short, { isUnclosed: true }),
    tableFile(
      "decimal-mark-unclear.csv",
      threeDecimals(3).map((column) => ({ ...column, cells: column.cells.map((cell) => cell.replace(/^0\./, "1.")) })),
      { delimiter: ";" },
      {
        outcome: "asks",
        findings: ["decimal-mark-unclear:refusal"],
        answers: { decimalMark: "point", rateHz: 100 },
        answeredFindings: ["rate-low:warning"],
        rateHz: 100,
      },
    ),
  ];
}

/** Files that differ in how they are written. */
export function dialectFiles(): readonly ZooFile[] {
  return [...everyDialect(), ...thousandsMarks(), ...mixedMarks(), ...otherForms()];
}
