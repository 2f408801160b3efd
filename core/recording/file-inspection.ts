import type { ColumnKind } from "../bytes/dialect.ts";
import type { ThousandsMark } from "../bytes/number-text.ts";
import type { Finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { C3dInspection } from "./c3d/inspect-c3d.ts";
import type { SeriesFigures } from "./c3d/series-figures.ts";
import type { PlateProof } from "./recording.ts";
import type { ColumnReading, TableReading } from "./request.ts";

/** One column of a delimited file: how it was read, and its figures over all rows as written. */
export interface InspectedColumn extends ColumnReading, SeriesFigures {
  /** Clocks are given in seconds since the midnight before their first stamp. */
  readonly kind: ColumnKind;
}

/** One plate as it is analysed. */
export interface InspectedPlate {
  readonly name: string;
  readonly limb: Limb;
  readonly proof: PlateProof;
  /** Vertical force, upward positive, over the samples of the recording. */
  readonly newtons: SeriesFigures;
}

/** Everything a reader needs to check what was understood of a delimited file; plain data. */
export interface TableInspection extends Omit<TableReading, "columns"> {
  readonly thousandsMark: ThousandsMark;
  /** The lines above the rows as written. */
  readonly header: readonly string[];
  /** Lines of the file that hold the first and the last row, from 1. */
  readonly firstRowLine: number;
  readonly lastRowLine: number;
  readonly channels: readonly InspectedColumn[];
  /** Absent, like the plates, where the file is refused. */
  readonly recording?: { readonly rateHz: number; readonly sampleCount: number; readonly timeOriginSeconds: number };
  readonly plates: readonly InspectedPlate[];
  readonly findings: readonly Finding[];
}

/** A file that holds nothing that could be inspected; the findings say why. */
export interface NothingToInspect {
  readonly kind: "unreadable";
  readonly findings: readonly Finding[];
}

/** What `inspectFile` finds; a text and a JSON writer can print each kind as it stands. */
export type FileInspection = TableInspection | C3dInspection | NothingToInspect;
