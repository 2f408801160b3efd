import type { InvolvedSide } from "../../core/limb.ts";
import type { JournalAction } from "./journal-actions.ts";
import type { StoredRecord } from "./record-tables.ts";

/** What screens and the command line show of the register. No Node imports: the renderer imports these types. */

/** One line of the list of athletes. */
export interface AthleteLine {
  readonly id: string;
  readonly code: string;
  readonly name?: string;
  /**
   * As the marked injuries and operations that have not ended say, else the statement that nobody is injured, else the
   * latest session that says so; absent where nobody has said it.
   */
  readonly involved?: InvolvedSide;
  /** Date of the latest operation. */
  readonly operated?: string;
  readonly sessions: number;
  readonly lastSession?: { readonly id: string; readonly date?: string; readonly milestone?: string };
}

/** Narrows the list of athletes; every part that is given must fit. */
export interface AthleteFilter {
  /** Any part of code or name, in any case, with or without accents; several words must all be found. */
  readonly text?: string;
  readonly involved?: InvolvedSide;
  /** Operated on or after, and on or before, these dates. */
  readonly operatedFrom?: string;
  readonly operatedTo?: string;
  /** Any part of the last session's milestone. */
  readonly milestone?: string;
  /** Last session on or after, and on or before, these dates. */
  readonly lastSessionFrom?: string;
  readonly lastSessionTo?: string;
}

/** Everything on one athlete's page, without the recordings' bytes. */
export interface AthletePage {
  readonly athlete: StoredRecord<"athletes">;
  readonly injuries: readonly StoredRecord<"injuries">[];
  readonly operations: readonly StoredRecord<"operations">[];
  /** By date, undated ones last. */
  readonly sessions: readonly SessionRecords[];
  readonly enteredFindings: readonly StoredRecord<"enteredFindings">[];
  readonly consents: readonly StoredRecord<"consents">[];
  readonly decisions: readonly StoredRecord<"decisions">[];
}

/** A session with what hangs on it. */
export interface SessionRecords {
  readonly session: StoredRecord<"sessions">;
  readonly recordings: readonly StoredRecord<"recordings">[];
  readonly trials: readonly StoredRecord<"trials">[];
}

/** One line of the journal, newest first. */
export interface JournalLine {
  readonly sequence: number;
  readonly at: string;
  readonly action: JournalAction;
  readonly who: string;
}

/** What a backup holds, before anything is replaced by it. */
export interface BackupPreview {
  readonly schema: number;
  readonly athletes: number;
  readonly sessions: number;
  readonly recordings: number;
  /** Time of the newest entry of its journal. */
  readonly lastChange: string;
  readonly encrypted: boolean;
  readonly afterwards: RestoredProtection;
  /** The passphrase of the register inside must be given to restore it. */
  readonly needsPassphrase: boolean;
  /** What protects it, and what will protect what is restored. */
  readonly protectionSentence: string;
}

/** Whose passphrase protects what was restored; a register that has one keeps it. */
export type RestoredProtection = "none" | "the register's" | "the backup's";

/** What erasing would remove, and what it cannot reach. */
export interface ErasurePreview {
  readonly athletes: number;
  readonly sessions: number;
  readonly recordings: number;
  readonly others: number;
  /** Backups of the register itself that will be rewritten. */
  readonly backups: number;
  /** Copies kept elsewhere, which a person must delete. */
  readonly copiesElsewhere: readonly string[];
}

/** What checking the register found. */
export interface Verification {
  /** One plain sentence each; empty when everything is as it was written. */
  readonly problems: readonly string[];
  readonly records: number;
  readonly recordings: number;
  readonly journalEntries: number;
  /** False while the register is locked: then only checksums, references and the chain were checked. */
  readonly contentsChecked: boolean;
  /** The journal's end is sealed under the passphrase; without one, who holds the file can write it anew, journal included. */
  readonly isKeyed: boolean;
}
