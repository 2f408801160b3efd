import type { InvolvedSide } from "../../core/ground/limb.ts";
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
  /** The user's name in the operating system. */
  readonly who: string;
  /** The name that the person at the machine gave; absent where none was given. */
  readonly by?: string;
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

/** What of a person is looked for in files after an erasure. */
export type SearchedKind = "code" | "name" | "date of birth" | "note" | "folder" | "recording";

/** One file that was searched byte by byte after an erasure. */
export interface SearchedFile {
  readonly path: string;
  readonly is: "register" | "log" | "backup" | "other";
  readonly bytes: number;
  /** Kinds of values that stand in it, or in its name, and in no record of anybody else; empty where none do. */
  readonly found: readonly SearchedKind[];
}

/** Values of a kind, and how many. */
export interface CountedKind {
  readonly kind: SearchedKind;
  readonly count: number;
}

/**
 * What an erasure did and what is true after it. It holds nothing of the person but places that a person chose for
 * copies, and it is kept nowhere.
 */
export interface ErasureCertificate {
  /** When it was made. */
  readonly at: string;
  /** What was erased; absent where an erasure that was broken off earlier was finished now. */
  readonly erased?: Pick<ErasurePreview, "athletes" | "sessions" | "recordings" | "others">;
  /** The register and the backups are encrypted, and with the athlete went the key of the athlete's contents. */
  readonly keyDestroyed: boolean;
  /** What was looked for, byte by byte; absent where the values were gone already and nothing could be looked for. */
  readonly searchedFor?: readonly CountedKind[];
  /** Values that searching can say nothing about: shorter than six bytes. */
  readonly tooShort: readonly CountedKind[];
  /** Values that records of other people in the register hold as well: finding them would say nothing. */
  readonly shared: readonly CountedKind[];
  /** Records that were damaged, so that what they said could not be looked for. */
  readonly unreadable: number;
  readonly files: readonly SearchedFile[];
  /** Files of which every page was written anew without what was erased. */
  readonly writtenAnew: readonly string[];
  /** Files that could not be read, or were not looked at, each with the reason; one sentence each. */
  readonly notSearched: readonly string[];
  /** Copies that were made elsewhere, with place and date; a person must delete them. */
  readonly copiesElsewhere: readonly string[];
  /** Backups beside the register that could not be opened or changed, each with the reason; they were left as they are. */
  readonly backupsOutOfReach: readonly string[];
  /** What is still to be done, and how it is finished; one sentence each, empty where all is done. */
  readonly remains: readonly string[];
  /** What the register keeps without the person's data. */
  readonly kept: { readonly athletes: number; readonly journalEntries: number };
}

/** What a copy is, and who keeps it: those that are "kept" lie beside the register, which makes and removes them. */
export type CopyKind =
  | "kept daily"
  | "kept before a migration"
  | "kept before a restoration"
  | "kept, put there by hand"
  | "backup elsewhere"
  | "archive elsewhere";

/** What whoever has the copy needs to read it. "This passphrase" is the register's of today. */
export type CopyProtection =
  | "none"
  | "this passphrase"
  | "an earlier passphrase"
  | "a passphrase of its own"
  | "not known";

/** Why a copy is not what a copy of today would be. */
export type StaleReason =
  | "erased since"
  | "earlier passphrase"
  | "no passphrase"
  | "another register"
  | "left behind"
  | "cannot be opened";

/** A copy of the register, or of a part of it, that the program knows. */
export interface KnownCopy {
  /** Names it in requests: the name of a kept backup's file, else the identifier of the note about the copy. */
  readonly key: string;
  /** Where it lies; of an archive that was handed over as a file, under which name. */
  readonly path: string;
  readonly kind: CopyKind;
  /** ISO time; absent where it is not known. */
  readonly madeAt?: string;
  /** Absent where it cannot be reached. */
  readonly byteLength?: number;
  readonly protection: CopyProtection;
  /** ISO time of the last check; absent: never. */
  readonly verifiedAt?: string;
  readonly found?: CopyFinding;
  readonly state: "there" | "unreachable";
  /** Why it cannot be reached, in one sentence. */
  readonly because?: string;
  readonly stale: readonly { readonly reason: StaleReason; readonly sentence: string }[];
  /** Code of the athlete where it holds one alone. */
  readonly athlete?: string;
}

/** What the last check of a copy found. */
export interface CopyFinding {
  /** `structure`: the file's alone; `checksums`: contents were not decrypted; `everything`: nothing was left out. */
  readonly extent: "structure" | "checksums" | "everything";
  /** One sentence each. */
  readonly problems: readonly string[];
  /** The file was written again since: what was found is of what lay there before. */
  readonly writtenSince: boolean;
}

/** Every copy that the program knows. */
export interface CopyList {
  /** Where the kept ones lie. */
  readonly folder: string;
  /** Kept ones first, the newest first. */
  readonly copies: readonly KnownCopy[];
  /** What cannot be told as things are, one sentence each. */
  readonly notTold: readonly string[];
}

/** What came of checking one copy. */
export interface CheckedCopy {
  readonly key: string;
  /** As it is listed now. */
  readonly copy: KnownCopy;
  /** Why nothing or not all of it was checked, in one sentence. */
  readonly notChecked?: string;
  /** False where the register is open for reading alone: when it was checked could not be kept. */
  readonly isKept: boolean;
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

/** A part of a certificate in words: a heading and what stands below it, a line each. */
export interface CertificateSection {
  readonly title: string;
  readonly lines: readonly string[];
  /** A person must look at this or do something. */
  readonly needsEyes?: boolean;
}
