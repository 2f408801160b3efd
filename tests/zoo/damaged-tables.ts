import { isDeepStrictEqual } from "node:util";
import { readTable } from "../../core/bytes/read-table.ts";
import type { Table } from "../../core/bytes/table.ts";
import type { Finding } from "../../core/ground/finding.ts";
import type { TableInspection } from "../../core/recording/file-inspection.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";
import type { ReadRecording } from "../../core/recording/recording-as-read.ts";
import { differInOneCellAtMost } from "../core/bytes/damage.ts";
import { type Flip, flipped } from "./damage-places.ts";
import { type ReadBytes, readBytes } from "./read-zoo.ts";
import { type RowPlaces, rowPlaces } from "./row-ends.ts";

/** A file that holds a table, unharmed. */
export interface WholeTable {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly answers: LayoutAnswers;
  readonly statesCount: boolean;
  readonly read: ReadBytes;
  readonly table: Table;
  readonly places: RowPlaces;
}

/** What became of a harmed file, for counting; a complaint is what must not be. */
export type Damage = "found" | "same" | "one value" | "shown in the header" | { readonly complaint: string };

/** Reads an unharmed file; undefined where it holds no table. */
export function wholeTable(
  name: string,
  bytes: Uint8Array,
  answers: LayoutAnswers,
  statesCount: boolean,
): WholeTable | undefined {
  const read = readBytes(name, bytes, answers);
  const table = tableOf(bytes, answers);
  if (read.inspection.kind !== "delimited" || table === undefined) return undefined;
  const { encoding, firstRowLine, lastRowLine } = read.inspection;
  const places = rowPlaces(bytes, encoding, firstRowLine, lastRowLine);
  return { name, bytes, answers, statesCount, read, table, places };
}

function tableOf(bytes: Uint8Array, { decimalMark }: LayoutAnswers): Table | undefined {
  return readTable(bytes, decimalMark === undefined ? {} : { decimalMark }).table;
}

/** True where a reading says something that the unharmed file's does not. */
function saysMore(whole: readonly Finding[], harmed: readonly Finding[]): boolean {
  return harmed.some((finding) => !whole.some((each) => isDeepStrictEqual(each, finding)));
}

/** Cuts a file and looks whether the reading says so where it must. */
export function cutTable(whole: WholeTable, length: number): Damage {
  const { name, bytes, answers, places, statesCount } = whole;
  const cut = bytes.subarray(0, length);
  const { read } = readBytes(name, cut, answers);
  if (saysMore(whole.read.read.findings, read.findings)) return "found";
  if (length >= places.end) return "same";
  if (!places.wholeLengths.has(length)) return { complaint: "a cut inside a row or the header was not found" };
  if (statesCount) return { complaint: "fewer rows than stated were not found" };
  const table = tableOf(cut, answers);
  const isPrefix = whole.table.columns.every((column, index) => {
    const harmed = table?.columns[index];
    return (
      column?.subarray(0, table?.rows).every((value, row) => Object.is(value, harmed?.[row])) ?? harmed === undefined
    );
  });
  return isPrefix && table !== undefined ? "same" : { complaint: "whole rows were read as other numbers" };
}

/** Flips a byte of a file and looks whether the reading says so, is the same, or differs in one value alone. */
export function flipTable(whole: WholeTable, flip: Flip): Damage {
  const { name, bytes, answers, places } = whole;
  const harmed = flipped(bytes, flip);
  const { read, inspection } = readBytes(name, harmed, answers);
  const before = whole.read;
  if (saysMore(before.read.findings, read.findings)) return "found";
  const table = tableOf(harmed, answers);
  if (inspection.kind !== "delimited" || table === undefined)
    return { complaint: "the table is gone and nothing says so" };
  const isSameReading = isDeepStrictEqual(understood(inspection), understood(before.inspection as TableInspection));
  const isSameRecording = isDeepStrictEqual(read.recording, before.read.recording);
  const isSameTable = isDeepStrictEqual(contents(table), contents(whole.table));
  if (isSameReading && isSameRecording && isSameTable) return "same";
  const isGone = read.findings.length < before.read.findings.length;
  if (isGone && isSameReading) return { complaint: "a finding is gone and nothing shows it" };
  if (flip.place >= places.start && flip.place < places.end) {
    // A refused file names its first fault; what its other rows would have meant is open.
    const isRecording = read.recording !== undefined || before.read.recording !== undefined;
    if (!isSameReading && isRecording) return { complaint: "a flip among the rows changed what was understood" };
    if (!differInOneCellAtMost(whole.table, table)) return { complaint: "more than one value differs" };
    return isOneSample(before.read, read) ? "one value" : { complaint: "more than one sample of a plate differs" };
  }
  if (!isSameTable) return { complaint: "a flip outside the rows changed the numbers" };
  return isSameReading ? { complaint: "the recording differs and nothing shows it" } : "shown in the header";
}

function contents({ columns, clocks, texts }: Table): unknown {
  return { columns, clocks, texts };
}

/** What was understood, without the lines as written or counted, the figures of the values and the findings. */
function understood(inspection: TableInspection): unknown {
  const {
    header: _header,
    lineCount: _lines,
    channels,
    plates,
    findings: _findings,
    shape: _shape,
    ...others
  } = inspection;
  return {
    others,
    channels: channels.map(
      ({ minimum: _least, maximum: _most, mean: _mean, values: _values, unreadable: _unreadable, ...rest }) => rest,
    ),
    plates: plates.map(({ newtons: _newtons, ...rest }) => rest),
  };
}

/** True when two recordings are the same but for the force at one instant. */
function isOneSample(one: ReadRecording, other: ReadRecording): boolean {
  const [before, after] = [one.recording, other.recording];
  if (before === undefined || after === undefined) return before === after;
  const bare = ({ plates, ...rest }: typeof before): unknown => [
    rest,
    plates.map(({ force: _force, ...plate }) => plate),
  ];
  if (!isDeepStrictEqual(bare(before), bare(after))) return false;
  return before.plates.every(
    ({ force }, index) => force.filter((value, row) => !Object.is(value, after.plates[index]!.force[row])).length <= 1,
  );
}
