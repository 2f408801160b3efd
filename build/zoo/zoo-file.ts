import type { TextEncoding } from "../../core/bytes/text-bytes.ts";
import type { Limb } from "../../core/ground/limb.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";

/** How a file is expected to stand: read, asking for what only a person can know, or of no use. */
type ExpectedOutcome = "understood" | "asks" | "refused";

/** What was written into one column. */
interface ExpectedColumn {
  readonly name: string;
  readonly role: "time" | "force" | "unused";
  readonly limb?: Limb;
  /** Of a force the unit it is in, else as the file writes it. */
  readonly unit: string;
  /** Values as written, at the expectation's sample rows; `null` where the cell holds no number. */
  readonly values: readonly (number | null)[];
}

interface ExpectedPlate {
  readonly limb: Limb;
  /** Newtons, upward positive, at the expectation's sample rows. */
  readonly newtons: readonly number[];
}

/** What a table is expected to be understood as, from what its script wrote. */
export interface ExpectedTable {
  readonly encoding: TextEncoding;
  readonly delimiter: "comma" | "semicolon" | "tab" | "pipe" | "spaces" | "none";
  readonly decimalMark: "point" | "comma";
  readonly thousandsMark: "none" | "point" | "comma" | "apostrophe" | "space";
  readonly rows: number;
  /** Lines of the first and the last row, from 1. */
  readonly firstRowLine: number;
  readonly lastRowLine: number;
  readonly columns: readonly ExpectedColumn[];
}

/** What a C3D file is expected to be understood as, from what its script wrote. */
export interface ExpectedC3d {
  readonly byteOrder: "Intel" | "DEC" | "SGI";
  readonly dataType: "integer" | "float";
  readonly platformTypes: readonly number[];
  readonly channelLabels: readonly string[];
  readonly sampleCount: number;
}

/** The expected reading of one file of the zoo. */
export interface ExpectedReading {
  readonly outcome: ExpectedOutcome;
  /** "code:severity" of every finding, in order, with nothing stated. */
  readonly findings: readonly string[];
  /** What a person would state; the rest of the expectation holds for the file with these answers. */
  readonly answers?: LayoutAnswers;
  /** The findings that remain with the answers. */
  readonly answeredFindings?: readonly string[];
  /** True where the file says above its rows how many it has, so that a cut between two rows must show. */
  readonly statesCount: boolean;
  readonly rateHz?: number;
  readonly rateFrom?: "time column" | "header" | "stated" | "unknown" | "frame rate";
  readonly table?: ExpectedTable;
  readonly c3d?: ExpectedC3d;
  /** Rows (or samples), from 0, at which values are given. */
  readonly sampleRows: readonly number[];
  /** Empty where no recording is expected. */
  readonly plates: readonly ExpectedPlate[];
}

/** One file of the zoo with its expected reading. */
export interface ZooFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly expected: ExpectedReading;
  /** Every cell in the plain form that `Number()` reads, by column. */
  readonly cells?: readonly (readonly string[])[];
}
