import type { Finding } from "../ground/finding.ts";
import type { RecordingFile } from "../recording/file.ts";
import type { Layout } from "../stated/layout.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { StatedOptions } from "../stated/stated-options.ts";
import type { EarlierMass } from "./mass-since-last.ts";

/** A file that could not be read at all (a dangling link, no permission); it becomes a refused trial. */
export interface UnreadableFile {
  /** Relative to its session's folder, forward slashes. */
  readonly path: string;
  /** A plain clause that completes "… because it": "points to a file that is not there". */
  readonly reason: string;
}

/** One folder of recordings, as bytes. */
export interface SessionInput {
  /** Relative to the argument it was found under; "" for loose files. */
  readonly folder: string;
  readonly files: readonly RecordingFile[];
  readonly unreadable: readonly UnreadableFile[];
  readonly description: SessionDescription;
  /** Findings made while reading session.json. */
  readonly descriptionFindings: readonly Finding[];
  readonly stated: StatedOptions;
  /** Saved layouts; each answers for every file of its shape what was not stated for the file. */
  readonly layouts?: readonly Layout[];
  /** Body mass of the athlete's last session before this one; absent where it is not known. */
  readonly earlierMass?: EarlierMass;
}

/** What is said about a session: everything but its files. */
export type SessionStatements = Omit<SessionInput, "files" | "unreadable">;
