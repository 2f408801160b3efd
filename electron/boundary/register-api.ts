import type { ClinicLimits } from "../../core/stated/cautions-schema.ts";
import type { CautionAddition } from "../cautions/caution-addition.ts";
import type { StartedFrom } from "../refusals/field-conflict.ts";
import type { RecordContent } from "../register/record-schemas.ts";
import type { RecordKey } from "../register/record-tables.ts";
import type {
  AthleteFilter,
  AthleteLine,
  AthletePage,
  BackupPreview,
  CertificateSection,
  CheckedCopy,
  CopyList,
  ErasureCertificate,
  ErasurePreview,
  Verification,
} from "../register/register-views.ts";
import type { MadeFile } from "./made-file.ts";
import type { Workspace } from "./workspace-view.ts";

type Nothing = Readonly<Record<string, never>>;

/** The kinds of records a form of the Athletes area writes. */
export type WrittenKind = "athletes" | "injuries" | "operations" | "consents";

/** One such record: new where no record has its identifier yet. */
export type WrittenRecord = {
  readonly [Kind in WrittenKind]: {
    readonly kind: Kind;
    readonly id: string;
    /** Whose it is; absent for an athlete. */
    readonly athlete?: string;
    readonly content: RecordContent<Kind>;
  };
}[WrittenKind];

type SessionContent = RecordContent<"sessions">;

/** What stands before the first jump of a session. */
export type SessionPlan = Pick<
  SessionContent,
  "milestone" | "protocol" | "place" | "tester" | "massKg" | "conditions" | "involved" | "injury"
> & {
  readonly date: string;
  /** What was answered and read before it. */
  readonly cautions?: CautionAddition;
};

/** What is noted during a session beside its description; absent parts stay. */
export type SessionNotes = Pick<SessionContent, "place" | "tester" | "conditions">;

/** One thing in the bin. */
export interface BinnedRecord extends RecordKey {
  /** What it is, in words ("Athlete GH-07, Maren Tveitlund"). */
  readonly title: string;
}

/** Where a backup lies, and the passphrases it may need: of a sealed file, and of the register inside. */
export interface BackupChoice {
  readonly path: string;
  readonly filePassphrase?: Uint8Array;
  readonly registerPassphrase?: Uint8Array;
}

/** What came of an archive: records added, there already and the same, there already and different. */
export interface ImportedArchive {
  readonly added: number;
  readonly same: number;
  readonly kept: number;
  readonly recordings: number;
  readonly notes: readonly string[];
}

/** The requests of the register. */
export interface RegisterApi {
  /** Opens the person's own register, made where there is none; the demo's copy is thrown away. */
  "register.openOwn": { readonly request: Nothing; readonly reply: Workspace };
  "register.lock": { readonly request: Nothing; readonly reply: Workspace };
  /** `remember`: keep the passphrase in the key store of the operating system, where there is one. */
  "register.unlock": {
    readonly request: { readonly passphrase: Uint8Array; readonly remember?: boolean };
    readonly reply: Workspace;
  };
  "register.setPassphrase": { readonly request: { readonly passphrase: Uint8Array }; readonly reply: Workspace };
  /** What makes a passphrase too weak for something new; nothing where it is strong enough. */
  "passphrase.weigh": {
    readonly request: { readonly passphrase: Uint8Array };
    readonly reply: { readonly weakness?: string };
  };
  "register.removePassphrase": { readonly request: Nothing; readonly reply: Workspace };
  /** Takes the passphrase out of the key store of the operating system. */
  "register.forgetPassphrase": { readonly request: Nothing; readonly reply: Workspace };
  "register.lockAfter": { readonly request: { readonly minutes: number }; readonly reply: Workspace };
  /** Says who is at the machine from now on; "" for no name. Locking forgets it. */
  "register.actBy": { readonly request: { readonly name: string }; readonly reply: Workspace };
  /** Whether the locked screen shows how many recordings of a watched folder came in. */
  "register.countWhileLocked": { readonly request: { readonly counts: boolean }; readonly reply: Workspace };
  /** Says whether a person is there; answers whether the register is locked. */
  "register.attend": { readonly request: { readonly present: boolean }; readonly reply: { readonly locked: boolean } };
  "register.verify": { readonly request: Nothing; readonly reply: Verification };
  "athletes.list": {
    readonly request: { readonly filter: AthleteFilter };
    /** `recent`: identifiers of the athletes opened last, the latest first. */
    readonly reply: { readonly athletes: readonly AthleteLine[]; readonly recent: readonly string[] };
  };
  /** Nothing where the athlete is not in the register, or in its bin. */
  "athletes.page": {
    readonly request: { readonly athlete: string };
    readonly reply: { readonly page?: AthletePage };
  };
  /** Keeps what a form changed of a record, field by field; `before` is what the record said when the form began. */
  "records.save": {
    readonly request: { readonly record: WrittenRecord } & StartedFrom<WrittenRecord["content"]>;
    readonly reply: Workspace;
  };
  "records.bin": { readonly request: RecordKey; readonly reply: Workspace };
  "records.takeOut": { readonly request: RecordKey; readonly reply: Workspace };
  "records.previewErasure": { readonly request: RecordKey; readonly reply: ErasurePreview };
  /**
   * For good, with everything that hangs on it; only what lies in the bin. Asked again while something remained to be
   * done, it goes on with that.
   */
  "records.erase": {
    readonly request: RecordKey;
    readonly reply: { readonly certificate: ErasureCertificate; readonly sections: readonly CertificateSection[] };
  };
  "bin.read": { readonly request: Nothing; readonly reply: { readonly records: readonly BinnedRecord[] } };
  /** Shows a session of the register in every area. */
  "sessions.open": { readonly request: { readonly session: string }; readonly reply: Workspace };
  /** Begins a session of an athlete under an identifier of the screen's making, and shows it. */
  "sessions.start": {
    readonly request: { readonly session: string; readonly athlete: string; readonly plan: SessionPlan };
    readonly reply: Workspace;
  };
  "sessions.note": {
    readonly request: { readonly session: string; readonly notes: SessionNotes } & StartedFrom<SessionNotes>;
    readonly reply: Workspace;
  };
  /** Puts a session that was brought in as files into the register, as one of an athlete that is there or is new. */
  "sessions.keep": {
    readonly request: {
      readonly folder: string;
      readonly athlete: { readonly id: string } | { readonly code: string; readonly name?: string };
    };
    readonly reply: Workspace;
  };
  /** The clinic's limits of the register; empty while nobody has set any. */
  "limits.read": { readonly request: Nothing; readonly reply: { readonly limits: ClinicLimits } };
  /** Confirms or changes them, by name; they hold for sessions from now on, and change none that is there. */
  "limits.set": {
    readonly request: {
      readonly limits: Omit<ClinicLimits, "setAt" | "setBy"> & { readonly setBy: string };
      /** What the form began with; refused where another window set others since. */
      readonly before: ClinicLimits;
    };
    readonly reply: { readonly limits: ClinicLimits };
  };
  /** Every copy of the register that is known, kept beside it or elsewhere. */
  "copies.read": { readonly request: Nothing; readonly reply: CopyList };
  /** Checks one of them as far as the keys at hand go, and keeps when; the passphrase is that of its envelope. */
  "copies.verify": {
    readonly request: { readonly key: string; readonly passphrase?: Uint8Array };
    readonly reply: CheckedCopy;
  };
  /** Takes a copy elsewhere off the list, of which the person says that it is no longer there. */
  "copies.forget": { readonly request: { readonly key: string }; readonly reply: Workspace };
  /** Beside the register, or at a place of the person's choice, there under a passphrase if one is given. */
  "backups.make": {
    readonly request: { readonly place?: string; readonly passphrase?: Uint8Array };
    readonly reply: { readonly path: string };
  };
  "backups.preview": { readonly request: BackupChoice; readonly reply: BackupPreview };
  "backups.restore": { readonly request: BackupChoice; readonly reply: Workspace };
  /** One athlete, or the whole register; as a file for the person, or at a place of their choice. */
  "archive.export": {
    readonly request: { readonly athlete?: string; readonly passphrase?: Uint8Array; readonly place?: string };
    readonly reply: { readonly records: number; readonly recordings: number; readonly file?: MadeFile };
  };
  "archive.import": {
    readonly request: { readonly bytes?: Uint8Array; readonly place?: string; readonly passphrase?: Uint8Array };
    readonly reply: ImportedArchive;
  };
}
