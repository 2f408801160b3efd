import { expect, test } from "vitest";
import { readTable, type TableOutcome } from "../../../core/bytes/read-table.ts";
import { told } from "../../told.ts";

const read = (text: string): TableOutcome => readTable(new TextEncoder().encode(text));
const codes = (outcome: TableOutcome): string[] => outcome.findings.map((each) => `${each.code}:${each.severity}`);
const values = (outcome: TableOutcome): (number[] | undefined)[] =>
  (outcome.table?.columns ?? []).map((column) => (column === undefined ? undefined : [...column]));

// All expected values in this file are read off the text by hand.

test.each([
  ["comma", "point", "t,l,r\n0.5,1.5,-2\n1.0,2.5,3e1\n"],
  ["semicolon", "point", "t;l;r\n0.5;1.5;-2\n1.0;2.5;3e1\n"],
  ["semicolon", "comma", "t;l;r\n0,5;1,5;-2\n1,0;2,5;3e1\n"],
  ["tab", "point", "t\tl\tr\n0.5\t1.5\t-2\n1.0\t2.5\t3e1\n"],
  ["tab", "comma", "t\tl\tr\n0,5\t1,5\t-2\n1,0\t2,5\t3e1\n"],
  ["spaces", "point", " t    l   r\n 0.5  1.5  -2\n 1.0  2.5 3e1\n"],
  ["spaces", "comma", " t    l   r\n 0,5  1,5  -2\n 1,0  2,5 3e1\n"],
  ["comma", "comma", 't,l,r\n"0,5","1,5",-2\n"1,0","2,5",3e1\n'],
  ["comma", "point", "t, l, r\r\n0.5, 1.5, -2\r\n1.0, 2.5, 3e1\r\n"],
  ["comma", "point", "t,l,r\r0.5,1.5,-2\r1.0,2.5,3e1\r"],
  ["comma", "point", "t,l,r,\n0.5,1.5,-2,\n1.0,2.5,3e1,\n"],
  ["comma", "point", '"t","l","r"\n"0.5","1.5","-2"\n"1.0","2.5","3e1"\n'],
])("the same table is read with %s as delimiter and a decimal %s", (delimiter, decimalMark, text) => {
  const outcome = read(text);
  expect(outcome.table?.dialect).toMatchObject({ delimiter, decimalMark, columnCount: 3 });
  expect(outcome.table?.names).toEqual(["t", "l", "r"]);
  expect(values(outcome)).toEqual([
    [0.5, 1],
    [1.5, 2.5],
    [-2, 30],
  ]);
  expect(outcome.findings).toEqual([]);
});

test("one number a line is a single column without names", () => {
  const outcome = read("633.21\n628.46\n640.51\n");
  expect(outcome.table).toMatchObject({ dialect: { delimiter: "none", columnCount: 1 }, headerLines: 0, names: [""] });
  expect(values(outcome)).toEqual([[633.21, 628.46, 640.51]]);
});

test("a decimal comma in a single column is told from two columns by leading zeros or by the name above", () => {
  expect(values(read("633,21\n628,06\n640,51\n"))).toEqual([[633.21, 628.06, 640.51]]);
  expect(values(read("Kraft (N)\n633,21\n628,46\n"))).toEqual([[633.21, 628.46]]);
  expect(values(read("left,right\n633,21\n628,46\n"))).toEqual([
    [633, 628],
    [21, 46],
  ]);
});

test("a header block, comments, a row of units and a footer are told from the rows", () => {
  const outcome = read(
    "Laboratory;Grynnholm\nRate;1000\n\n# simulated\nTime;Left;Right\ns;N;N\n0,001;1,5;2\n# a remark\n0,002;2,5;3\n\nEnd of data\n",
  );
  expect(outcome.table).toMatchObject({
    headerLines: 6,
    names: ["Time", "Left", "Right"],
    units: ["s", "N", "N"],
    rows: 2,
  });
  expect([...(outcome.table?.lineOfRow ?? [])]).toEqual([7, 9]);
  expect(codes(outcome)).toEqual(["lines-skipped:note"]);
  expect(told(outcome.findings[0])?.where).toBe("line 11");
});

test("column names in a comment line are used", () => {
  expect(read("# time left right\n0.1 1.5 2.5\n0.2 1.5 2.5\n").table?.names).toEqual(["time", "left", "right"]);
});

test("names with units in brackets stay together where blanks separate the columns", () => {
  const names = read("time (s) left (N) right (N)\n0.1 1.5 2.5\n0.2 1.5 2.5\n").table?.names;
  expect(names).toEqual(["time (s)", "left (N)", "right (N)"]);
});

test("a key and value line above a single column is not its name", () => {
  expect(read("rate: 1000\n1.5\n2.5\n").table?.names).toEqual([""]);
});

test("a column of text is skipped and the others are read", () => {
  const outcome = read('clock,force\n"12:00:01,1",5.5\n"12:00:01,2",6.5\n12:00:01.3,7.5\n');
  expect(values(outcome)).toEqual([undefined, [5.5, 6.5, 7.5]]);
});

test("a quoted remark may hold delimiters and quotes", () => {
  const outcome = read('note,force\n"a, b",5.5\n"a ""b"", c",6.5\nplain,7.5\n');
  expect(values(outcome)).toEqual([undefined, [5.5, 6.5, 7.5]]);
  expect(outcome.findings).toEqual([]);
});

test("Windows-1252 text is read and the guess is said", () => {
  const bytes = new TextEncoder().encode("Zeit;Kraft §\n0,1;5\n0,2;6\n").filter((byte) => byte !== 0xc2);
  const outcome = readTable(bytes);
  expect(outcome.table?.names[1]).toBe("Kraft §");
  expect(outcome.table?.encoding).toBe("Windows-1252");
  expect(codes(outcome)).toEqual(["encoding-guessed:note"]);
});

test("UTF-16 text is read like any other", () => {
  const text = "\ufefft,l\n0.5,1.5\n1.0,2.5\n";
  const bytes = new Uint8Array(Uint16Array.from(text, (character) => character.charCodeAt(0)).buffer);
  const outcome = readTable(bytes);
  expect(outcome.table?.encoding).toBe("UTF-16LE");
  expect(values(outcome)).toEqual([
    [0.5, 1],
    [1.5, 2.5],
  ]);
});

test.each([
  ["", "empty:refusal"],
  [" \r\n\n", "empty:refusal"],
  ["\ufeff", "empty:refusal"],
])("%j is an empty file", (text, code) => {
  expect(codes(read(text))).toEqual([code]);
});

test.each([
  "Dear colleague,\nthe athlete came on Monday at 10 o'clock.\nShe jumped 4 times with each leg.\n",
  "name,sport\nMaren,handball\nAila,handball\n",
  '{ "trials": [] }\n',
  "time,left,right\n",
  "5\n",
])("%j is no data", (text) => {
  expect(codes(read(text))).toEqual(["not-data:refusal"]);
});

test("a binary file is no data", () => {
  const bytes = Uint8Array.from({ length: 4000 }, (_, index) => (index * 7919) % 251);
  expect(codes(readTable(bytes))).toEqual(["not-data:refusal"]);
});

test("a cell without a number is kept apart with its line and never replaced", () => {
  const outcome = read("t,l\n0.1,5\n0.2,\n0.3,NaN\n0.4,5x\n0.5,9\n");
  expect(outcome.table?.unreadable).toEqual([
    { row: 1, column: 1, line: 3, text: "" },
    { row: 2, column: 1, line: 4, text: "NaN" },
    { row: 3, column: 1, line: 5, text: "5x" },
  ]);
  expect(values(outcome)[1]).toEqual([5, Number.NaN, Number.NaN, Number.NaN, 9]);
});

test("an empty line inside a single column is an unreadable cell", () => {
  expect(read("5.1\n5.2\n\n5.4\n").table?.unreadable).toEqual([{ row: 2, column: 0, line: 3, text: "" }]);
});

test("a row with another number of columns inside is refused with its line", () => {
  const outcome = read("t,l\n0.1,5\n0.2,6\n0.3,7,8\n0.4,8\n");
  expect(codes(outcome)).toEqual(["columns-unclear:refusal"]);
  expect(told(outcome.findings[0])?.where).toBe("line 4");
});

test("a file of two widths is refused whichever comes first", () => {
  const wide = "0.1,5,6\n0.2,6,7\n0.3,7,8\n";
  const narrow = "0.4,8\n0.5,9\n";
  expect(codes(read(wide + narrow))).toEqual(["columns-unclear:refusal"]);
  expect(codes(read(narrow + wide))).toEqual(["columns-unclear:refusal"]);
});

test("names that do not fit the rows are not used, and that is said", () => {
  const outcome = read("time,left,right\n0.1,5\n0.2,6\n");
  expect(outcome.table?.names).toEqual(["", ""]);
  expect(codes(outcome)).toEqual(["columns-unclear:warning"]);
});

test.each([
  ["fewer columns, no line end", "t,l\n0.1,5.25\n0.2,6.25\n0.3"],
  ["fewer columns, a line end", "t,l\n0.1,5.25\n0.2,6.25\n0.3\n"],
  ["fewer decimals than above", "t,l\n0.1,5.25\n0.2,6.25\n0.3,7.2"],
  ["an exponent cut off", "t,l\n0.1,5.2e+01\n0.2,6.2e+01\n0.3,7.2e+0"],
  ["a whole number that may go on", "t,l\n0.1,525\n0.2,625\n0.3,72"],
])("a last line cut short is left out and said: %s", (_, text) => {
  const outcome = read(text);
  expect(outcome.table?.rows).toBe(2);
  expect(codes(outcome)).toEqual(["truncated:warning"]);
});

test("a complete last number without a line end is kept", () => {
  const outcome = read("t,l\n0.1,5.25\n0.2,6.25\n0.3,7.25");
  expect(outcome.table?.rows).toBe(3);
  expect(outcome.findings).toEqual([]);
});

test.each(["v33.21\n628.46\n640.51\n", "0.1,6o3.2\n0.2,628.4\n0.3,640.5\n", "633.21|628.46\n640.51\n650.25\n"])(
  "a damaged first row without names above it is said: %j",
  (text) => {
    const outcome = read(text);
    expect(outcome.table?.rows).toBe(2);
    expect(codes(outcome)).toEqual(["lines-skipped:warning"]);
    expect(told(outcome.findings[0])?.where).toBe("line 1");
  },
);
