import { finding } from "../../core/ground/finding.ts";
import { analyzeDrafts, draftFile } from "../../core/session/file-trials.ts";
import type { WitnessedTrial } from "../../core/session/prove-trial-plates.ts";
import { refusedFile } from "../../core/session/refused-file.ts";
import type { SessionStatements } from "../../core/session/session-input.ts";
import type { TrialDraft } from "../../core/session/trial-draft.ts";
import type { Settings } from "../../core/settings/settings.ts";
import type { TrialWeightContext } from "../../core/weight/session-weighing.ts";
import type { WeighedTrial } from "../../core/weight/weighed-trial.ts";
import { readListedFile } from "../files/read-folder.ts";

/** A session whose files are worked through one by one. */
export interface WorkedSession {
  /** Where its files lie on this machine; never part of a result. */
  readonly directory: string;
  readonly statements: SessionStatements;
  /** As they hold for this session. */
  readonly settings: Settings;
}

/** What the first pass over a file leaves behind; small, and free of curves. */
export type FirstPass =
  | {
      readonly kind: "recording";
      readonly path: string;
      readonly sha256: string;
      readonly weighed: readonly WeighedTrial[];
    }
  | { readonly kind: "unreadable"; readonly path: string; readonly reason: string };

/** Drafts of files with so many bytes together are kept between the passes; the others are read and cut again. */
const keptByteLimit = 192 * 1024 * 1024;

/**
 * Works through the files of one session in two passes: each is cut and weighed; then, with the weight that the whole
 * session gives, analysed. Memory stays within a limit however many files there are.
 */
export class SessionWork {
  readonly #session: WorkedSession;
  readonly #kept = new Map<string, readonly TrialDraft[]>();
  #keptBytes = 0;

  constructor(session: WorkedSession) {
    this.#session = session;
  }

  /** The first pass over a file. */
  weigh(path: string): FirstPass {
    const read = readListedFile(this.#session.directory, path);
    if (read.kind !== "recording") return { ...read, path };
    const { drafts, weighed } = draftFile(read.file, this.#session.statements, this.#session.settings);
    // The drafts alone, without the bytes they were made from.
    const { byteLength } = read.file.bytes;
    if (this.#keptBytes + byteLength <= keptByteLimit) {
      this.#kept.set(path, drafts);
      this.#keptBytes += byteLength;
    }
    return { kind: "recording", path, sha256: read.file.sha256, weighed };
  }

  /** The second pass over a file that the first found to be a recording. */
  analyze(path: string, sha256: string, weight: TrialWeightContext): readonly WitnessedTrial[] {
    const drafts = this.#kept.get(path) ?? this.#draftAgain(path, sha256);
    if (drafts === undefined) return [changedMeanwhile(path, sha256)];
    this.#kept.delete(path);
    return analyzeDrafts({ drafts }, weight, this.#session.statements, this.#session.settings).map(
      ({ result, evidence }) => ({
        result,
        evidence,
      }),
    );
  }

  #draftAgain(path: string, sha256: string): readonly TrialDraft[] | undefined {
    const read = readListedFile(this.#session.directory, path);
    if (read.kind !== "recording" || read.file.sha256 !== sha256) return undefined;
    return draftFile(read.file, this.#session.statements, this.#session.settings).drafts;
  }
}

/** A file that is no longer what it was at the first pass cannot be part of one result. */
function changedMeanwhile(path: string, sha256: string): WitnessedTrial {
  const reason = finding("unreadable/changed", "refusal", {}, { place: { at: "name", name: path } });
  return { result: refusedFile(path, sha256, reason), evidence: { limbFromPlates: false } };
}
