import type { DecimalMark } from "../bytes/number-text.ts";
import type { TextEncoding } from "../bytes/text-bytes.ts";
import type { Limb } from "../ground/limb.ts";
import type { ForceColumnUnit } from "./force-units.ts";
import type { HeaderHint } from "./header-hint.ts";
import type { LayoutShape } from "./shape-schema.ts";
import type { TimeUnit } from "./time-units.ts";

/** How sure a decision about a column is: `unclear` ones are asked about or left unused. */
export type Confidence = "certain" | "likely" | "unclear";

/** One column as it was understood. */
export interface ColumnReading {
  /** From 1. */
  readonly position: number;
  readonly name: string;
  readonly role: "time" | "force" | "unused";
  readonly limb?: Limb;
  /** Of a column of numbers: what its decimals start with. */
  readonly decimalMark?: DecimalMark;
  /** As written in the file or stated by a person; "" where the file is silent. */
  readonly unit: string;
  /** Why it was read this way, in words. */
  readonly reason: string;
  readonly confidence: Confidence;
}

/** What was understood of a delimited text file; shown to the person who imports it. */
export interface TableReading {
  readonly kind: "delimited";
  readonly encoding: TextEncoding;
  readonly delimiter: LayoutShape["delimiter"];
  /** Of most columns. */
  readonly decimalMark: DecimalMark;
  /** Lines of the whole file. */
  readonly lineCount: number;
  /** Lines before the numeric body, the header line included. */
  readonly headerLines: number;
  /** What the lines above the column names say about the recording, each with its line and wording. */
  readonly hints: readonly HeaderHint[];
  readonly rows: number;
  /** Of all lines of numbers: how many are samples of the recording, and how many are not. */
  readonly rowsKept: number;
  readonly rowsDropped: number;
  readonly columns: readonly ColumnReading[];
  readonly rateHz?: number;
  readonly rateFrom: "time column" | "header" | "stated" | "unknown";
  /** Where the rate stands, in words: "line 3: Sampling rate: 1000 Hz", "column time (s)", "stated"; "" while unknown. */
  readonly rateSource: string;
  /** How the stamps were read; absent without a time column or where it counts samples. */
  readonly timeUnit?: TimeUnit;
  /** The rate of the stamps, where the samples were put on another time base on request. */
  readonly resampledFromHz?: number;
  readonly forceUnit?: ForceColumnUnit;
  readonly forceUnitFrom: "header" | "stated" | "unknown";
  /** The mass that turned body weights into newtons, with its source in words. */
  readonly mass?: { readonly massKg: number; readonly source: string };
  /** What a saved layout would know this file by. */
  readonly shape: LayoutShape;
  /** The saved layout that was applied. */
  readonly layout?: string;
}
