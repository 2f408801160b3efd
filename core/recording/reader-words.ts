import type { FileReading } from "./file-reading.ts";

/** What people read of a reader's kind of file. */
export interface ReaderWords {
  /** Heading over what carries the feet. */
  readonly part: string;
  /** False where the format has no column that could be the time. */
  readonly hasTimeColumn: boolean;
}

export const readerWords: Readonly<Record<FileReading["kind"], ReaderWords>> = {
  delimited: { part: "Column", hasTimeColumn: true },
  c3d: { part: "Force platform", hasTimeColumn: false },
};
