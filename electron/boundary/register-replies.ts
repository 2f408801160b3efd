import type { RecordKey } from "../register/record-tables.ts";

/** One thing in the bin. */
export interface BinnedRecord extends RecordKey {
  /** What it is, in words ("Athlete GH-07, Maren Tveitlund"). */
  readonly title: string;
}

/** What came of an archive: records added, there already and the same, there already and different. */
export interface ImportedArchive {
  readonly added: number;
  readonly same: number;
  readonly kept: number;
  readonly recordings: number;
  readonly notes: readonly string[];
}
