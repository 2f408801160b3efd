import { createHash } from "node:crypto";
import type { Finding } from "../../core/ground/finding.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { EarlierMass } from "../../core/session/mass-since-last.ts";
import type { SessionInput } from "../../core/session/session-input.ts";
import type { Layout } from "../../core/stated/layout.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { comparePaths, joinPath } from "./recording-names.ts";

/** One session at hand. Never altered: a change makes a new one, so that its analysis can be kept by identity. */
export interface StoredSession {
  readonly folder: string;
  /** Imported bytes exactly as they came, in the order of their paths. */
  readonly files: readonly RecordingFile[];
  readonly stated: Stated;
  /** The session's record, where it is kept in the register; absent for one that lives in memory alone. */
  readonly keptAs?: string;
  /** Body mass of the same athlete's last session before, where the register knows it. */
  readonly earlierMass?: EarlierMass;
}

/** A recording with the hash that identifies it. */
export function recordingFile(path: string, bytes: Uint8Array): RecordingFile {
  return { path, bytes, sha256: createHash("sha256").update(bytes).digest("hex") };
}

/** The session with one file more, or with that file in the place of an earlier one of the same path. */
export function withFile(session: StoredSession, file: RecordingFile): StoredSession {
  const { files } = session;
  let [from, to] = [0, files.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    const here = files[middle];
    if (here !== undefined && comparePaths(here.path, file.path) < 0) from = middle + 1;
    else to = middle;
  }
  return { ...session, files: files.toSpliced(from, files[from]?.path === file.path ? 1 : 0, file) };
}

/** What the analysis of a session takes; nothing is stated beside its own description and the saved layouts. */
export function sessionInput(
  session: StoredSession,
  layouts: readonly Layout[],
  files: readonly RecordingFile[] = session.files,
): SessionInput {
  return {
    layouts,
    folder: session.folder,
    files,
    unreadable: [],
    description: session.stated.description,
    descriptionFindings: session.stated.findings,
    stated: {},
    ...(session.earlierMass !== undefined && { earlierMass: session.earlierMass }),
  };
}

/** Where the same bytes are open in other sessions: "month-6/jump-1.csv". */
export function copiesOf(file: RecordingFile, folder: string, sessions: Iterable<StoredSession>): readonly string[] {
  return [...sessions]
    .filter((session) => session.folder !== folder)
    .flatMap((session) =>
      session.files.filter((each) => each.sha256 === file.sha256).map((each) => joinPath(session.folder, each.path)),
    );
}

/** What is said about a session, with what was found while reading it. */
export interface Stated {
  readonly description: SessionDescription;
  readonly findings: readonly Finding[];
}
