import { expect, test } from "vitest";
import { readTable, type TableOutcome } from "../../../core/bytes/read-table.ts";
import { told } from "../../told.ts";

const read = (text: string): TableOutcome => readTable(new TextEncoder().encode(text));
const codes = (outcome: TableOutcome): string[] => outcome.findings.map((each) => `${each.code}:${each.severity}`);
const values = (outcome: TableOutcome): (number[] | undefined)[] =>
  (outcome.table?.columns ?? []).map((column) => (column === undefined ? undefined : [...column]));

// All expected values in this file are read off the text by hand.

test("pipes separate columns", () => {
  const outcome = read("time (s) | left (N)\n0.001 | 5.25\n0.002 | 6.25\n");
  expect(outcome.table).toMatchObject({ dialect: { delimiter: "pipe" }, names: ["time (s)", "left (N)"] });
  expect(values(outcome)).toEqual([
    [0.001, 0.002],
    [5.25, 6.25],
  ]);
});

test.each([
  ["point before comma", "t;F\n0,001;1.234,5\n0,002;987,5\n0,003;1.240,25\n", [1234.5, 987.5, 1240.25]],
  ["comma before point", "t;F\n0.001;1,234.5\n0.002;987.5\n0.003;1,240.25\n", [1234.5, 987.5, 1240.25]],
  ["comma in quotes", 't,F\n0.001,"1,234.5"\n0.002,987.5\n0.003,"1,240.25"\n', [1234.5, 987.5, 1240.25]],
  ["apostrophe", "t;F\n0.001;1'234.5\n0.002;987.5\n0.003;1’240.25\n", [1234.5, 987.5, 1240.25]],
  ["no-break blank", "t;F\n0,001;1\u00a0234,5\n0,002;987,5\n0,003;1\u202f240,25\n", [1234.5, 987.5, 1240.25]],
  [
    "no-break blank, columns between blanks",
    "t F\n0,001 1\u00a0234,5\n0,002 987,5\n0,003 1\u00a0240,25\n",
    [1234.5, 987.5, 1240.25],
  ],
  ["twice", "t;F\n0.001;1,234,567.5\n0.002;2,234,567\n", [1_234_567.5, 2_234_567]],
  ["settled by another column", "t;F\n0,001;1.234\n0,002;987\n0,003;1.240\n", [1234, 987, 1240]],
])("thousands marks are read where they have one reading: %s", (_, text, expected) => {
  const outcome = read(text);
  expect(values(outcome)[1]).toEqual(expected);
  expect(outcome.findings).toEqual([]);
});

test.each([
  ["point", "812.345\n813.105\n814.999\n", "812.345 or 812345"],
  ["comma", "Kraft (N)\n812,345\n813,105\n814,999\n", "812.345 or 812345"],
  ["point between semicolons", "1;812.345\n2;813.105\n3;814.999\n", "812.345 or 812345"],
])("a mark that may be a decimal or a thousands mark in every number is asked about: %s", (_, text, readings) => {
  const outcome = read(text);
  expect(codes(outcome)).toEqual(["decimal-mark-unclear:refusal"]);
  expect(told(outcome.findings[0])?.message).toContain(readings);
});

test("one number with a single reading, or a comma between the columns, settles the decimal mark", () => {
  expect(values(read("812.345\n0.123\n814.999\n"))[0]).toEqual([812.345, 0.123, 814.999]);
  expect(values(read("1,812.345\n2,813.105\n3,814.999\n"))[1]).toEqual([812.345, 813.105, 814.999]);
  expect(read("1,812.345\n2,813.105\n3,814.999\n").findings).toEqual([]);
});

test("a comma that separates columns and decimals alike is refused, and whole numbers with too few names are not", () => {
  const twice = read("Zeit,links\n0,001,300\n0,002,301\n0,003,302\n");
  expect(codes(twice)).toContain("decimal-mark-unclear:refusal");
  expect(codes(read("Zeit,links\n0.001,1,300\n0.002,2,301\n0.003,3,302\n"))).toEqual(["columns-unclear:warning"]);
});

test("a stated decimal mark settles it as well", () => {
  const bytes = new TextEncoder().encode("812.345\n813.105\n814.999\n");
  const outcome = readTable(bytes, { decimalMark: "point" });
  expect(values(outcome)[0]).toEqual([812.345, 813.105, 814.999]);
  expect(outcome.findings).toEqual([]);
  expect(values(readTable(bytes, { decimalMark: "comma" }))[0]).toEqual([812_345, 813_105, 814_999]);
});

test("a single thousands mark in a file without any is an unreadable cell, not a number", () => {
  const outcome = read(
    `t;F\n${Array.from({ length: 40 }, (_, row) => `${row}.5;${row === 20 ? "1'345.5" : "812.5"}\n`).join("")}`,
  );
  expect(outcome.table?.unreadable).toEqual([{ row: 20, column: 1, line: 22, text: "1'345.5" }]);
});

test("facts in a header block are handed on as written, with their lines", () => {
  const header = [
    "Club: Grynnholm HK",
    "rate = 1000 Hz",
    "mass;69,4;kg",
    "side\tleft",
    "# recorded: 2026-02-03 10:15:03",
    "'just a remark'",
    "Samples: 3; Plates: 2",
    "",
    "time (s);left (N)",
  ].join("\n");
  const outcome = read(`${header}\n0,001;5,25\n0,002;6,25\n0,003;6,5\nOperator: none\n`);
  expect(outcome.table?.headerFields).toEqual([
    { key: "Club", value: "Grynnholm HK", line: 1 },
    { key: "rate", value: "1000 Hz", line: 2 },
    { key: "mass", value: "69,4 kg", line: 3 },
    { key: "side", value: "left", line: 4 },
    { key: "recorded", value: "2026-02-03 10:15:03", line: 5 },
    { key: "Samples", value: "3", line: 7 },
    { key: "Plates", value: "2", line: 7 },
  ]);
  expect(outcome.table?.footerFields).toEqual([{ key: "Operator", value: "none", line: 13 }]);
  expect(outcome.table?.names).toEqual(["time (s)", "left (N)"]);
});

test("facts padded by a spreadsheet and a value in quotes that holds the delimiter are facts", () => {
  const outcome = read('Rate,1000,,\n"Athlete","Tveitlund, Maren",,\nt,a,b,c\n1,2.5,3,4\n2,3.5,4,5\n');
  expect(outcome.table?.headerFields).toEqual([
    { key: "Rate", value: "1000", line: 1 },
    { key: "Athlete", value: "Tveitlund, Maren", line: 2 },
  ]);
});

test.each([
  ["brackets", "time;left;right\n[s];[N];[N]\n", ["[s]", "[N]", "[N]"]],
  ["parentheses", "time;left;right\n(s);(N);(N)\n", ["(s)", "(N)", "(N)"]],
  ["bare", "time;left;right\ns;N;N\n", ["s", "N", "N"]],
])("a row of units in %s is no row of names", (_, header, units) => {
  const outcome = read(`${header}0.001;5.25;6.25\n0.002;6.25;7.25\n`);
  expect(outcome.table).toMatchObject({ names: ["time", "left", "right"], units });
  expect(outcome.findings).toEqual([]);
});

test.each([
  ["each plate once", ";Plate 1;;Plate 2;\nTime;Fz;Mx;Fz;Mx\n"],
  ["each plate above each channel", ";Plate 1;Plate 1;Plate 2;Plate 2\nTime;Fz;Mx;Fz;Mx\n"],
  ["with a row of units", ";Plate 1;;Plate 2;\nTime;Fz;Mx;Fz;Mx\ns;N;N.m;N;N.m\n"],
])("names over two lines are joined, the plate first: %s", (_, header) => {
  const outcome = read(`${header}0.001;5.25;6.25;7.25;8.25\n0.002;6.25;7.25;8.25;9.25\n`);
  expect(outcome.table?.names).toEqual(["Time", "Plate 1 Fz", "Plate 1 Mx", "Plate 2 Fz", "Plate 2 Mx"]);
});

test("a title above the names is not joined to them", () => {
  const outcome = read("Recording of Monday;;\nFz;Fz;Fz\n5.25;6.25;7.25\n6.25;7.25;8.25\n");
  expect(outcome.table?.names).toEqual(["Fz", "Fz", "Fz"]);
});

test("several columns of one name are kept apart by their position", () => {
  const outcome = read("Fz,Fz,Fz\n5.25,6.25,7.25\n6.5,7.5,8.5\n");
  expect(outcome.table?.names).toEqual(["Fz", "Fz", "Fz"]);
  expect(values(outcome)).toEqual([
    [5.25, 6.5],
    [6.25, 7.5],
    [7.25, 8.5],
  ]);
});

test("names in quotes may hold the delimiter and line ends", () => {
  const outcome = read('Title\n"Time\n(s)","left, front\n(N)"\n0.001,5.25\n0.002,6.25\n');
  expect(outcome.table?.names).toEqual(["Time (s)", "left, front (N)"]);
  expect([...(outcome.table?.lineOfRow ?? [])]).toEqual([5, 6]);
  expect(outcome.findings).toEqual([]);
});

test("a quoted remark may run over several lines, and the rows behind it keep their lines", () => {
  const outcome = read('note,force\nplain,5.5\nplain,6.5\n"one\ntwo",7.5\nplain,8.5\n');
  expect(values(outcome)[1]).toEqual([5.5, 6.5, 7.5, 8.5]);
  expect([...(outcome.table?.lineOfRow ?? [])]).toEqual([2, 3, 4, 6]);
  expect(outcome.table?.texts[0]?.values).toEqual(["plain", "one\ntwo"]);
});

test("names separated by another mark than the rows are used", () => {
  expect(read("time,left,right\n0.001 5.25 6.25\n0.002 6.25 7.25\n").table?.names).toEqual(["time", "left", "right"]);
});

test("words and truth values are kept as text", () => {
  const { table } = read("t;sync;phase;F\n0.1;true;stand;5\n0.2;false;stand;6\n0.3;true;jump;7\n");
  expect(table?.dialect.kinds).toEqual(["number", "text", "text", "number"]);
  const words = (column: number): string[] =>
    Array.from(table?.texts[column]?.valueOfRow ?? [], (index) => table!.texts[column]!.values[index]!);
  expect(words(1)).toEqual(["true", "false", "true"]);
  expect(words(2)).toEqual(["stand", "stand", "jump"]);
  expect(table?.columns.map((column) => column === undefined)).toEqual([false, true, true, false]);
});

test.each([
  ["10:15:03.125", "10:15:03.126", [36_903.125, 36_903.126], ""],
  ["2026-02-03T10:15:03.125Z", "2026-02-03T10:15:03.126Z", [36_903.125, 36_903.126], "2026-02-03"],
  ["2026-02-03 10:15:03,125", "2026-02-03 10:15:03,126", [36_903.125, 36_903.126], "2026-02-03"],
  ["03.02.2026 10:15:03", "04.02.2026 10:15:03", [36_903, 123_303], "2026-02-03"],
  ["23:59:59.999", "00:00:00.000", [86_399.999, 86_400], ""],
  ["01:03.125", "01:03.126", [63.125, 63.126], ""],
])("wall-clock time (%s) is read as seconds from midnight", (one, other, seconds, date) => {
  const { table, findings } = read(`Zeit;F\n${one};5\n${other};6\n`);
  expect(findings).toEqual([]);
  expect(table?.dialect.kinds).toEqual(["clock", "number"]);
  expect(table?.clocks[0]).toEqual({ hasDate: date !== "", date, seconds: Float64Array.from(seconds) });
});

test("a date and a time between blanks are a column of text and a clock", () => {
  const { table } = read("2026-02-03 10:15:03.125 5.5 6.5\n2026-02-03 10:15:03.126 5.5 6.5\n");
  expect(table?.dialect.kinds).toEqual(["text", "clock", "number", "number"]);
  expect([...table!.clocks[1]!.seconds]).toEqual([36_903.125, 36_903.126]);
});

test("a stamp that is no time is an unreadable cell", () => {
  const { table } = read("Zeit;F\n10:15:03;5\n10:15:04;6\n10:75:05;7\n10:15:06;8\n");
  expect(table?.unreadable).toEqual([{ row: 2, column: 0, line: 4, text: "10:75:05" }]);
});

test.each([
  ["in place of the first number", "t;F\n0.1;5\n0.2;6\n0.3;7\nMean;6\nSD;1\n", 3],
  ["with fewer cells", "t;F;G\n0.1;5;8\n0.2;6;8\n0.3;7;8\nMean;6\n", 3],
  ["in a column of text", "phase;F\nstand;5\nstand;6\nstand;7\nMean;6\n", 3],
])("a summary below the rows is no sample and is named with its line: %s", (_, text, rows) => {
  const outcome = read(text);
  expect(outcome.table?.rows).toBe(rows);
  expect(codes(outcome)).toEqual(["lines-skipped:note"]);
  expect(told(outcome.findings[0])?.where).toBe("line 5");
});

test.each(["# a remark", "% a remark", "// a remark", "; a remark"])("%j is a comment", (remark) => {
  const outcome = read(`${remark}\nt,F\n0.1,5\n${remark}\n0.2,6\n`);
  expect(outcome.table).toMatchObject({ rows: 2, names: ["t", "F"] });
  expect(outcome.findings).toEqual([]);
});

test("a row behind a comment mark between the rows is refused, because a sample is missing", () => {
  const outcome = read("312.5\n313.5\n#13.75\n314.5\n");
  expect(codes(outcome)).toEqual(["lines-skipped:refusal"]);
  expect(told(outcome.findings[0])?.where).toBe("line 3");
});

test("rows with too few and too many cells are refused with their lines and counts", () => {
  const outcome = read("t,l\n0.1,5\n0.2,6\n0.3\n0.4,7,8\n0.5,8\n");
  expect(codes(outcome)).toEqual(["columns-unclear:refusal"]);
  expect(told(outcome.findings[0])?.message).toBe("The rows have 2 columns, but line 4 has 1, line 5 has 3.");
});

test.each([
  "Samples: 5",
  "number of samples = 5",
  "rows;5",
  "Frames\t5",
  "Anzahl Abtastwerte: 5",
  "Messwerte: 5",
  "Nombre d'échantillons : 5",
  "Número de muestras: 5",
])("fewer rows than the header states (%s) is a recording cut short, with both numbers", (statement) => {
  const rows = "0.001;5.25\n0.002;6.25\n0.003;7.25\n";
  const outcome = read(`${statement}\ntime;force\n${rows}`);
  expect(codes(outcome)).toEqual(["truncated:warning"]);
  expect(told(outcome.findings[0])?.message).toContain("the file holds 3 rows: 2 of 5 are missing");
  expect(read(`${statement}\ntime;force\n${rows}0.004;7.5\n0.005;7.75\n`).findings).toEqual([]);
});

test.each(["samples per second: 1000", "Sample rate: 1000", "Frame rate;100", "Force plate rows apart: 40 cm"])(
  "%j states no number of rows",
  (statement) => {
    expect(read(`${statement}\ntime;force\n0.001;5.25\n0.002;6.25\n`).findings).toEqual([]);
  },
);

test("more rows than the header or the footer states is a contradiction", () => {
  expect(codes(read("Samples: 2\nt;F\n0.1;5.5\n0.2;6.5\n0.3;7.5\n"))).toEqual(["rows-contradict:warning"]);
  expect(codes(read("t;F\n0.1;5.5\n0.2;6.5\n0.3;7.5\nSamples: 2\n"))).toContain("rows-contradict:warning");
});

test("thousands marks in a stated number of rows do not matter", () => {
  const rows = Array.from({ length: 1200 }, (_, row) => `${row}.5;${row}.25\n`).join("");
  for (const count of ["1200", "1,200", "1.200", "1'200", "1 200"]) {
    expect(read(`Samples: ${count}\nt;F\n${rows}`).findings).toEqual([]);
  }
});

test.each([
  ["with a mark", "\ufeff", "UTF-16LE", true, []],
  ["with a mark", "\ufeff", "UTF-16BE", false, []],
  ["without a mark", "", "UTF-16LE", true, ["encoding-guessed:note"]],
  ["without a mark", "", "UTF-16BE", false, ["encoding-guessed:note"]],
])("UTF-16 %s is read in either byte order", (_, mark, encoding, littleEndian, expected) => {
  const text = `${mark}Zeit;Kraft\n0,1;5,25\n0,2;6,25\n`;
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let index = 0; index < text.length; index++) view.setUint16(2 * index, text.charCodeAt(index), littleEndian);
  const outcome = readTable(bytes);
  expect(outcome.table).toMatchObject({ encoding, names: ["Zeit", "Kraft"] });
  expect(codes(outcome)).toEqual(expected);
});

test("a long table reads the same as its rows say, whatever room was made for it", () => {
  // Short rows first and long ones later, so that the estimate of the number of rows is wrong on either side.
  const cells = Array.from({ length: 40_000 }, (_, row) => (row < 20_000 ? row % 10 : row * 1.5 + 1e9));
  const outcome = read(`F,G\n${cells.map((cell) => `${cell},${cell}\n`).join("")}`);
  expect([...outcome.table!.columns[0]!]).toEqual(cells);
  expect(outcome.table?.lineOfRow[39_999]).toBe(40_001);
});

test("a fact above the names whose words are as many as the columns does not make blanks the delimiter", () => {
  for (const fact of ["Rate: 500 Hz", "mass\t68 kg"]) {
    const outcome = read(`${fact}\ntime (s)\tleft (N)\tright (N)\n0.1\t5.5\t6.5\n0.2\t\t7.5\n0.3\t5.5\t6.5\n`);
    expect(outcome.table?.dialect.delimiter).toBe("tab");
    expect(outcome.table?.unreadable).toMatchObject([{ row: 1, column: 1 }]);
  }
});

test("an empty column between two plates takes the name of neither", () => {
  const rows = "0.1,5.5,,0.1,6.5\n0.2,5.5,,0.2,6.5\n";
  const { table } = read(`left,,,right,\ntime (s),Fz (N),,time (s),Fz (N)\n${rows}`);
  expect(table?.names).toEqual(["left time (s)", "left Fz (N)", "", "right time (s)", "right Fz (N)"]);
});

test("a file that stops behind the blank between thousands and hundreds stops inside a number", () => {
  const rows = Array.from({ length: 8 }, (_, row) => `0,${row};1 02${row},25\n`).join("");
  const outcome = read(`t;F\n${rows}0,8;1 `);
  expect(codes(outcome)).toEqual(["truncated:warning"]);
  expect(outcome.table?.rows).toBe(8);
});
