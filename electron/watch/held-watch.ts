import type { NextRecordings } from "../boundary/stated-changes.ts";
import type { SeenFile } from "./scan-folder.ts";

/**
 * All that a watch needs to go on in another thread, as plain data: no recording is in it. What waits while the register
 * is locked, and what was left aside, is not among `files`, so that it is looked at again.
 */
export interface HeldWatch {
  readonly folder: string;
  readonly next: NextRecordings;
  /** Recordings taken in since the watch began. */
  readonly taken: number;
  /** What was taken in of the folder, each file as it was seen then. */
  readonly files: readonly SeenFile[];
  /** The session of the register that takes the recordings in, by its record. */
  readonly keptAs?: string;
  /** The session in memory that does, where it is none of the register. */
  readonly session?: string;
}
