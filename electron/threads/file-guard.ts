import type { RecordingFile } from "../../core/recording/file.ts";

/** A file as a guard knows it: its place for the person, its hash for the program. */
export interface GuardedFile {
  /** "month-6/jump-1.csv". */
  readonly path: string;
  readonly sha256: string;
}

/** Stands over the work on files, so that one that ends the working thread can be named, and is not opened for ever. */
export interface FileGuard {
  /** Is told before work on a file begins. */
  begin(file: GuardedFile): void;
  /** True for a file that is not opened any more. */
  isPutAside(file: Pick<RecordingFile, "sha256">): boolean;
}

/** Completes "… because it". */
export const putAsideReason =
  "took more memory or time than one file may, twice; it is put aside until the program is started anew";

/** Where nothing stands over it. */
export const noGuard: FileGuard = { begin: () => undefined, isPutAside: () => false };
