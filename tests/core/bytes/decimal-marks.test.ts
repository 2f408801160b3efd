import { expect, test } from "vitest";
import { readTable, type TableOutcome } from "../../../core/bytes/read-table.ts";
import { readRecording } from "../../../core/recording/read-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { told } from "../../told.ts";

const read = (text: string): TableOutcome => readTable(new TextEncoder().encode(text));
const codes = (outcome: TableOutcome): string[] => outcome.findings.map((each) => `${each.code}:${each.severity}`);
const column = (outcome: TableOutcome, index: number): number[] => [...outcome.table!.columns[index]!];

const jump = simulateCountermovementJump({
  seed: 7,
  rateHz: 1000,
  massKg: 90,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.3,
  timeToTakeoffSeconds: 0.8,
  quietSecondsBefore: 1.5,
  quietSecondsAfter: 1,
  plateNoiseNewtons: 0.6,
});

type Written = (text: string) => string;
const withPoint: Written = (text) => text;
const withComma: Written = (text) => text.replace(".", ",");

/** The jump of 4,738 samples with the marks of time and of forces. */
function jumpText(time: Written, force: Written): string {
  const rows = Array.from({ length: jump.sampleCount }, (_, row) =>
    [
      time((row / jump.rateHz).toFixed(3)),
      ...jump.plates.map((plate) => force((plate.force[row] ?? 0).toFixed(2))),
    ].join(";"),
  );
  return `Time [s];Left [N];Right [N]\n${rows.join("\n")}\n`;
}

const recordingOf = (text: string) =>
  readRecording({ path: "jump.csv", sha256: "", bytes: new TextEncoder().encode(text) }, {}, defaultSettings);

// Read for all columns alike, `1.000` was taken for 1000: header and the first second became preamble.
test.each([
  ["times 0.999 beside forces 449,44", withPoint, withComma],
  ["times 0,999 beside forces 449.44", withComma, withPoint],
])("%s give the recording that one mark gives, and the file says so", (_, time, force) => {
  const plain = recordingOf(jumpText(withPoint, withPoint));
  const mixed = recordingOf(jumpText(time, force));
  expect(plain.recording?.sampleCount).toBe(jump.sampleCount);
  expect(mixed.recording).toEqual(plain.recording);
  expect(mixed.reading).toMatchObject({ headerLines: 1, rowsKept: jump.sampleCount, rowsDropped: 0 });
  expect(mixed.findings.map((each) => `${each.code}:${each.severity}`)).toEqual(["decimal-marks-differ:note"]);
});

test("a damaged cell does not turn its column round: it is unreadable", () => {
  const outcome = read("t;F\n0.001;449,44\n0.002;449.52\n0.003;449,61\n0.004;449,70\n");
  expect(outcome.table?.unreadable).toEqual([{ row: 1, column: 1, line: 3, text: "449.52" }]);
});

test("thousands marks are those of the column's own decimal mark", () => {
  const outcome = read("t;F\n0.001;1.234,5\n0.002;987,5\n0.003;1.240,25\n");
  expect(column(outcome, 0)).toEqual([0.001, 0.002, 0.003]);
  expect(column(outcome, 1)).toEqual([1234.5, 987.5, 1240.25]);
});

test("a column of three decimals beside columns with the other mark is asked about, and a stated mark settles it alone", () => {
  const text = "t;F\n1.001;449,44\n1.002;449,52\n1.003;449,61\n";
  expect(codes(read(text))).toEqual(["decimal-mark-unclear:refusal"]);
  const stated = readTable(new TextEncoder().encode(text), { decimalMark: "point" });
  expect(column(stated, 0)).toEqual([1.001, 1.002, 1.003]);
  expect(column(stated, 1)).toEqual([449.44, 449.52, 449.61]);
  expect(codes(stated)).toEqual(["decimal-marks-differ:note"]);
});

test("a stated mark against what every column shows is said, and the numbers stay what they are", () => {
  const stated = readTable(new TextEncoder().encode("t;F\n0.1;5.25\n0.2;6.25\n"), { decimalMark: "comma" });
  expect(column(stated, 1)).toEqual([5.25, 6.25]);
  expect(codes(stated)).toEqual(["decimal-marks-differ:warning"]);
  expect(told(stated.findings[0])?.message).toBe(
    "A decimal comma was stated, but the numbers of columns 1, 2 show a point and were read with it.",
  );
});

test("a row below the names is among the rows even where the line behind it is none, and that line is named", () => {
  const outcome = read("t;F\n0.1;5.5\nabc\n0.3;7.5\n0.4;8.5\n");
  expect(outcome.table).toMatchObject({ names: ["t", "F"], headerLines: 1, rows: 3, rowsDropped: 0 });
  expect(codes(outcome)).toEqual(["columns-unclear:refusal"]);
  expect(told(outcome.findings[0])?.message).toContain("line 3 has 1");
});

test.each([
  ["all kept", "t;F\n0.1;5.5\n0.2;6.5\n", 2, 0],
  ["one of another width inside", "t;F\n0.1;5.5\n0.2;6.5;1.5\n0.3;7.5\n0.4;8.5\n", 3, 1],
  ["one behind a comment mark", "t;F\n0.1;5.5\n#0.2;6.5\n0.3;7.5\n", 2, 1],
  ["the last cut short", "t;F\n0.1;5.5\n0.2;6.5\n0.3", 2, 1],
  ["a line of another width above the names", "7;8;9\nt;F\n0.1;5.5\n0.2;6.5\n", 2, 1],
  ["facts, blank lines and words are no rows", "Mass;70,5\n\nt;F\n0.1;5.5\n0.2;6.5\n\nend\n", 2, 0],
])("rows that are kept and rows that are dropped are counted: %s", (_, text, kept, dropped) => {
  expect(read(text).table).toMatchObject({ rows: kept, rowsDropped: dropped });
});
