/** What the screens show of the register that is open. No Node imports: the renderer imports these types. */
export interface RegisterView {
  /** `own`: the person's; `demo`: a copy of the invented world that can be thrown away; `none`: it could not be opened. */
  readonly kind: "own" | "demo" | "none";
  /** Where it lies on this computer. */
  readonly file: string;
  /** Why it could not be opened, in one sentence; then nothing of it was touched. */
  readonly problem?: string;
  /** A passphrase protects it. */
  readonly encrypted: boolean;
  /** Its contents cannot be read until the passphrase is given. */
  readonly locked: boolean;
  /** Why it is open for reading alone, in one sentence. */
  readonly readOnlyBecause?: string;
  /** What of it could not be read, in one sentence. */
  readonly damage?: string;
  /** That an erasure is not finished and what it waits for, in one sentence or more. */
  readonly unfinishedErasure?: string;
  /** Why today's backup could not be made, in one sentence. */
  readonly backupTrouble?: string;
  /** How many of its fields are written again under another protection; absent where none are on their way. */
  readonly conversion?: { readonly done: number; readonly total: number };
  /** What could not be brought under the register's protection or rid of what was erased, a sentence each. */
  readonly protectionTroubles: readonly string[];
  /** The code of the journal as it ends now, for sheets; absent in the demo, which is thrown away. */
  readonly journalCode?: string;
  /** The person has a register of their own on this computer. */
  readonly hasOwn: boolean;
  /** Minutes without a sign of a person after which it locks itself; 0: never. */
  readonly lockAfterMinutes: number;
  /** Who is at the machine, as they said; "" where they gave no name, absent where nobody was asked yet. */
  readonly by?: string;
  /** Names of people who acted lately, the latest first; empty while it is locked. */
  readonly lateActors: readonly string[];
  /** While it is locked and a folder is watched, the locked screen shows how many recordings came in. */
  readonly countsWhileLocked: boolean;
}
