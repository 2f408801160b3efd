import type { RecordingFile } from "../../core/recording/file.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { RegisterView } from "../boundary/register-view.ts";
import type { StoredSession } from "../files/stored-session.ts";

/** What a change of a session is about, for the journal. */
export type KeptChange = "session changed" | "trials changed" | "cautions added";

/**
 * Keeps sessions for good. The workspace tells it of each change before showing it; what cannot be kept is refused with
 * a sentence, and then nothing has changed. `id` is the session's record (`StoredSession.keptAs`).
 */
export interface SessionKeeper {
  /** Keeps what is said about a session from now on. @returns the journal's entry; undefined where it is kept already */
  describe(id: string, description: SessionDescription, change: KeptChange): number | undefined;
  /** Moves the recordings of these names to the bin. @returns the journal's entry */
  takeOut(id: string, paths: readonly string[]): number | undefined;
  /**
   * Keeps a recording of a name that the session does not have, which costs the same however many it has.
   * @param stated what is stated of it, at its place among the session's entries
   * @returns the journal's entry
   */
  addRecording(
    id: string,
    file: RecordingFile,
    stated?: { readonly entry: FileEntry; readonly position: number },
  ): number | undefined;
  /**
   * Keeps a recording in the place of another one of the same name, of which everything that was said stays.
   * @returns the journal's entry; undefined where exactly this one is kept already
   */
  replaceRecording(id: string, file: RecordingFile): number | undefined;
  /**
   * A session as it is kept now; undefined where it is no longer kept.
   * @param known recordings at hand, which are not read again
   */
  read(
    id: string,
    known: readonly RecordingFile[],
  ): Pick<StoredSession, "files" | "stated" | "earlierMass"> | undefined;
  /** Takes an action of this sitting back by its entry in the journal, or does it again. */
  undo(sequence: number): void;
  redo(sequence: number): void;
  /** Keeps all that the work has kept, or nothing of it where it throws. */
  whole<Result>(work: () => Result): Result;
  /** What the screens show of the register. */
  view(): RegisterView;
}
