import { shortRows } from "./small-jump.ts";
import { cellsOf, forceColumn, plainColumns, timeColumn, written, type ZooColumn } from "./table-columns.ts";
import { tableFile } from "./write-table.ts";
import type { ZooFile } from "./zoo-file.ts";

const rows = shortRows;
const inMilliseconds = { unit: "ms", perSecond: 1000, decimals: 0 };
const forces = [forceColumn("left (N)", "left", rows), forceColumn("right (N)", "right", rows)] as const;

function clock(row: number, date = ""): string {
  const milliseconds = 58_700 + 2 * row;
  const seconds = (milliseconds / 1000) % 60;
  return `${date}10:${milliseconds < 60_000 ? "15" : "16"}:${seconds.toFixed(3).padStart(6, "0")}`;
}

/** Clocks are values of no plain number; the reader's seconds are compared by the time base instead. */
const clockColumn = (name: string, date?: string): ZooColumn => ({
  name,
  role: "time",
  unit: "s",
  cells: cellsOf(rows, (row) => clock(row, date)),
  // Seconds since midnight: 10:15 are 36,900 of them.
  value: (row) => Number((36_900 + 58.7 + row / 500).toFixed(3)),
});

/** Stamps that say 500 Hz except where `change` moves them. */
function stamps(change: (row: number) => number, name = "time (s)"): ZooColumn {
  return { name, role: "time", unit: "s", cells: cellsOf(rows, (row) => written(change(row), 3)) };
}

function ways(): readonly ZooFile[] {
  const index: ZooColumn = { name: "sample", role: "time", unit: "", cells: cellsOf(rows, (row) => String(row)) };
  const fromHeader = { rateFrom: "header" } as const;
  return [
    tableFile("time-milliseconds.csv", [timeColumn("time (ms)", rows, inMilliseconds), ...forces]),
    tableFile(
      "time-microseconds.csv",
      [timeColumn("time (µs)", rows, { unit: "µs", perSecond: 1e6, decimals: 0 }), ...forces],
      {
        delimiter: ";",
      },
    ),
    tableFile("time-from-later.csv", [stamps((row) => 12.5 + row / 500), ...forces]),
    tableFile("time-since-1970.csv", [stamps((row) => 1768644903 + row / 500, "timestamp (s)"), ...forces]),
    tableFile("time-before-zero.csv", [stamps((row) => (row - 50) / 500), ...forces]),
    tableFile("time-clock.csv", [clockColumn("clock"), ...forces], { delimiter: ";" }),
    tableFile("time-clock-with-date.csv", [clockColumn("recorded", "2026-01-17T"), ...forces]),
    tableFile(
      "sample-index-with-rate.csv",
      [{ ...index, unit: "" }, ...forces],
      { above: ["Sampling rate: 500 Hz"] },
      fromHeader,
    ),
    tableFile(
      "sample-index-alone.csv",
      [index, ...forces],
      {},
      { outcome: "asks", findings: ["rate-missing:refusal"], answers: { rateHz: 500 }, rateFrom: "stated" },
    ),
    tableFile("no-time-header-rate.csv", forces, { above: ["Rate: 500 Hz"] }, fromHeader),
    tableFile("no-time-header-interval.csv", forces, { above: ["Sampling interval: 2 ms"] }, fromHeader),
    tableFile("no-time-rate-in-prose.csv", forces, { above: ["Sampled at 500 Hz in the gym"] }, fromHeader),
    tableFile(
      "no-time-no-rate.csv",
      forces,
      {},
      { outcome: "asks", findings: ["rate-missing:refusal"], answers: { rateHz: 500 }, rateFrom: "stated" },
    ),
    tableFile(
      "one-column.txt",
      [forceColumn("", "both", rows)],
      { delimiter: "", names: false },
      {
        outcome: "asks",
        findings: ["rate-missing:refusal", "unit-not-stated:refusal"],
        answers: { rateHz: 500, unit: "N" },
        rateFrom: "stated",
      },
    ),
    tableFile(
      "time-unit-unclear.csv",
      [{ ...index, name: "t", role: "unused" }, ...forces],
      {},
      {
        outcome: "asks",
        findings: ["rate-missing:refusal"],
        answers: { rateHz: 500, time: "none" },
        answeredFindings: ["time-left-out:warning"],
        rateFrom: "stated",
      },
    ),
  ];
}

function faults(): readonly ZooFile[] {
  const even = (row: number): number => row / 500;
  const refusedAs = (code: string) => ({ outcome: "refused", findings: [`${code}:refusal`] }) as const;
  const jitter = stamps((row) => even(row) + (row % 7 === 3 ? 0.0004 : 0), "time (s)");
  const fine = { ...jitter, cells: cellsOf(rows, (row) => written(even(row) + (row % 7 === 3 ? 0.0004 : 0), 4)) };
  const contradicting = { outcome: "asks", findings: ["rate-contradicts:refusal"] } as const;
  const gapColumn = stamps((row) => even(row < 90 ? row : row + 25));
  const empty = forces.map((column) => ({
    ...column,
    cells: column.cells.map((cell, row) => (row === 70 ? "" : cell)),
  }));
  return [
    tableFile(
      "rate-contradicts-header.csv",
      plainColumns(rows),
      { above: ["Sampling rate: 1000 Hz"] },
      { ...contradicting, answers: { rateHz: 500 }, answeredFindings: ["rate-contradicts:warning"] },
    ),
    tableFile(
      "two-rates-in-header.csv",
      forces,
      { above: ["Sampling rate: 500 Hz", "Acquisition rate: 1000 Hz"] },
      {
        ...contradicting,
        answers: { rateHz: 500 },
        answeredFindings: ["rate-contradicts:warning"],
        rateFrom: "stated",
      },
    ),
    tableFile("stamps-uneven.csv", [fine, ...forces], {}, { findings: ["time-uneven:warning"] }),
    tableFile(
      "stamps-twice.csv",
      [stamps((row) => even(row === 81 ? 80 : row)), ...forces],
      {},
      // The step behind the repeated stamp is twice as long as the others.
      { outcome: "refused", findings: ["time-uneven:refusal", "gap:refusal"] },
    ),
    tableFile(
      "stamps-backwards.csv",
      [stamps((row) => even(row < 100 ? row : row - 60)), ...forces],
      {},
      { outcome: "asks", findings: ["time-uneven:refusal"] },
    ),
    tableFile("stamps-gap.csv", [gapColumn, ...forces], {}, refusedAs("gap")),
    tableFile(
      "stamps-missing.csv",
      [{ ...stamps(even), cells: stamps(even).cells.map((cell, row) => (row === 50 ? "" : cell)) }, ...forces],
      {},
      refusedAs("cells-unreadable"),
    ),
    tableFile("cells-missing.csv", [stamps(even), ...empty], {}, refusedAs("cells-unreadable")),
    tableFile("stamps-rounded.csv", [timeColumn("time (s)", rows, { rateHz: 800 }), ...forces], {}, { rateHz: 800 }),
    tableFile(
      "stamps-too-coarse.csv",
      [timeColumn("time (s)", rows, { decimals: 2 }), ...forces],
      {},
      { outcome: "asks", findings: ["time-uneven:refusal"] },
    ),
    tableFile("two-clocks-alike.csv", [
      stamps(even),
      forces[0],
      { ...timeColumn("time (ms)", rows, inMilliseconds), role: "unused" },
      forces[1],
    ]),
    tableFile(
      "two-clocks-apart.csv",
      [stamps(even), forces[0], { ...stamps((row) => even(row + 4)), role: "unused" }, forces[1]],
      {},
      { findings: ["columns-disagree:warning"] },
    ),
    tableFile(
      "rate-low.csv",
      [timeColumn("time (s)", rows, { rateHz: 100 }), ...forces],
      {},
      { rateHz: 100, findings: ["rate-low:warning"] },
    ),
  ];
}

/** Files that stop too early. */
function truncated(): readonly ZooFile[] {
  const short = plainColumns(rows);
  const cut = (characters: number) => (text: string) => text.slice(0, -characters);
  const found = { findings: ["truncated:warning"] };
  // Its line end and half of its last digit are missing.
  const wide = tableFile("cut-inside-character.txt", short, { encoding: "UTF-16 little", rowsFound: rows - 1 }, found);
  return [
    tableFile("cut-inside-number.csv", short, { damage: cut(3), rowsFound: rows - 1 }, found),
    tableFile(
      "cut-inside-row.csv",
      short,
      { delimiter: ";", decimalMark: ",", damage: cut(12), rowsFound: rows - 1 },
      found,
    ),
    tableFile("cut-below-count.csv", short, { above: [`Samples: ${rows + 40}`] }, { ...found, statesCount: true }),
    { ...wide, bytes: wide.bytes.subarray(0, -3) },
  ];
}

/** Files that differ in how they tell time, or break off. */
export function timeFiles(): readonly ZooFile[] {
  return [...ways(), ...faults(), ...truncated()];
}
