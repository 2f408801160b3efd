import type { RecordingFile } from "../../core/recording/file.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { RecordingAnswers } from "../boundary/stated-changes.ts";
import { withCautions } from "../cautions/add-cautions.ts";
import type { WrittenCautions } from "../cautions/caution-addition.ts";
import { keepAdded } from "../cautions/keep-added.ts";
import { joinPath, sessionFileName } from "../files/recording-names.ts";
import type { Stated, StoredSession } from "../files/stored-session.ts";
import { broughtBack, takeOutWords, withoutEntriesOf, withoutFiles } from "../files/taken-out.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { EditHistory, type KeptStep, type NumberedStep, type StepReach } from "./edit-history.ts";
import { answerWords } from "./edit-words.ts";
import type { HeldWorkspace } from "./held-workspace.ts";
import { withAnswers } from "./session-edits.ts";
import type { KeptChange, SessionKeeper } from "./session-keeper.ts";
import { listSessions } from "./session-list.ts";

/** The sessions that are open, what was said about them, and the steps that can be taken back. */
export class OpenSessions {
  readonly history = new EditHistory();
  readonly #sessions = new Map<string, StoredSession>();
  /** What was stated about each session when it was read, or last taken along. */
  readonly #kept = new Map<string, Stated["description"]>();
  #keeper: SessionKeeper | undefined;
  /** Folder of the session that is shown. */
  shown = "";
  /** Whether the last decision changed a status, in a sentence. */
  effect = "";
  /** What the last request took back or did again, in a sentence. */
  stepped = "";

  /** Has the sessions that belong to the register kept there. */
  keepWith(keeper: SessionKeeper): void {
    this.#keeper = keeper;
  }

  get keeper(): SessionKeeper | undefined {
    return this.#keeper;
  }

  get all(): readonly StoredSession[] {
    return [...this.#sessions.values()];
  }

  get byteLength(): number {
    let total = 0;
    for (const { files } of this.#sessions.values()) for (const { bytes } of files) total += bytes.byteLength;
    return total;
  }

  /** True where something was decided and neither taken along nor kept in the register. */
  get isUnsaved(): boolean {
    return this.all.some(
      ({ folder, stated, keptAs }) =>
        keptAs === undefined && JSON.stringify(stated.description) !== JSON.stringify(this.#kept.get(folder) ?? {}),
    );
  }

  has(folder: string): boolean {
    return this.#sessions.has(folder);
  }

  find(folder: string): StoredSession | undefined {
    return this.#sessions.get(folder);
  }

  /** @throws RequestRefused where it is not open */
  get(folder: string): StoredSession {
    const session = this.#sessions.get(folder);
    if (session === undefined) throw new RequestRefused("That session is not open any more.");
    return session;
  }

  /** Opens a session, or puts it in the place of what was known of it. */
  put(session: StoredSession): void {
    this.#sessions.set(session.folder, session);
  }

  remove(folder: string): void {
    this.#sessions.delete(folder);
    this.#kept.delete(folder);
  }

  clear(): void {
    this.#sessions.clear();
    this.#kept.clear();
    this.history.clear();
    this.shown = "";
    this.#nothingSaid();
  }

  /** What lives in memory alone. */
  get held(): Pick<HeldWorkspace, "sessions" | "takenAlong" | "history" | "shown"> {
    const sessions = this.all.filter(({ keptAs }) => keptAs === undefined);
    return { sessions, takenAlong: [...this.#kept], history: this.history.held, shown: this.shown };
  }

  /** Goes on with what lived in memory alone, in the place of what is open. */
  takeOver({ sessions, takenAlong, history, shown }: OpenSessions["held"]): void {
    this.clear();
    for (const session of sessions) this.put(session);
    for (const [folder, description] of takenAlong) this.#kept.set(folder, description);
    this.history.takeOver(history);
    this.shown = this.has(shown) ? shown : (listSessions(this.all)[0]?.folder ?? "");
  }

  /** States something about a session, as a step that can be taken back. */
  change(
    session: StoredSession,
    description: Stated["description"],
    words: string,
    change: KeptChange = "session changed",
  ): void {
    if (JSON.stringify(description) === JSON.stringify(session.stated.description)) return;
    const { folder, stated: before, keptAs } = session;
    if (keptAs !== undefined && this.#keeper !== undefined) {
      const sequence = this.#keeper.describe(keptAs, description, change);
      if (sequence !== undefined) this.recordKept({ reach: { folder }, words, sequence });
      this.refreshKept(folder);
      return;
    }
    const after: Stated = { ...before, description };
    this.#nothingSaid();
    this.history.record({ reach: { folder }, words, before, after });
    this.put({ ...session, stated: after });
  }

  /** Takes recordings out of a session, as a step that can be taken back; those of the register go to its bin. */
  takeOut(session: StoredSession, paths: readonly string[]): void {
    const { folder, stated: before, keptAs } = session;
    const takenOut = session.files.filter(({ path }) => paths.includes(path));
    const words = takeOutWords(takenOut.map(({ path }) => path));
    if (keptAs !== undefined && this.#keeper !== undefined) {
      const sequence = this.#keeper.takeOut(keptAs, paths);
      if (sequence !== undefined) this.recordKept({ reach: { folder }, words, sequence });
      this.refreshKept(folder);
      return;
    }
    const after: Stated = { ...before, description: withoutEntriesOf(before.description, paths) };
    this.#nothingSaid();
    this.history.record({ reach: { folder }, words, before, after, takenOut });
    this.put({ ...session, files: withoutFiles(session.files, takenOut), stated: after });
  }

  /** Adds answers, readings or an opening to a session: kept for good, and no step that can be taken back. */
  addCautions(session: StoredSession, added: WrittenCautions): void {
    const description = withCautions(session.stated.description, added);
    const { folder, stated, keptAs } = session;
    this.#nothingSaid();
    if (keptAs !== undefined && this.#keeper !== undefined) {
      this.#keeper.describe(keptAs, description, "cautions added");
      this.refreshKept(folder);
      return;
    }
    this.put({ ...session, stated: { ...stated, description } });
  }

  /** What a session.json says takes the place of what was said before, as a step that can be taken back. */
  describe(session: StoredSession, read: Stated): void {
    const { folder, stated: before } = session;
    const after = { ...read, description: keepAdded(before.description, read.description) };
    this.put({ ...session, stated: after });
    this.#kept.set(folder, after.description);
    if (Object.keys(before.description).length > 0) {
      this.history.record({ reach: { folder }, words: `Read ${joinPath(folder, sessionFileName)}`, before, after });
    } else this.history.forgetUndone(folder);
  }

  /** Takes a step back; the session it belongs to is shown. */
  undo(step: NumberedStep): void {
    if ("sequence" in step) this.#stepKept(step, (keeper) => keeper.undo(step.sequence));
    else this.#state(step.reach.folder, step.before, (files) => broughtBack(files, step.takenOut ?? []));
    this.history.undone(step);
    this.stepped = `Taken back: ${step.words}.`;
  }

  /** Does a step again that was taken back. */
  redo(step: NumberedStep): void {
    if ("sequence" in step) this.#stepKept(step, (keeper) => keeper.redo(step.sequence));
    else this.#state(step.reach.folder, step.after, (files) => withoutFiles(files, step.takenOut ?? []));
    this.history.redone(step);
    this.stepped = `Done again: ${step.words}.`;
  }

  /** Does all of the work, here and in the register, or leaves everything as it was. */
  whole<Result>(work: () => Result): Result {
    const [sessions, kept, { shown, effect, stepped }] = [new Map(this.#sessions), new Map(this.#kept), this];
    const restoreHistory = this.history.snapshot();
    try {
      return this.#keeper === undefined ? work() : this.#keeper.whole(work);
    } catch (error) {
      refill(this.#sessions, sessions);
      refill(this.#kept, kept);
      restoreHistory();
      Object.assign(this, { shown, effect, stepped });
      throw error;
    }
  }

  /** Opens a session of the register beside what is open, and shows it. */
  openKept(session: StoredSession): void {
    // what it said in memory alone was taken over; the register's own steps begin here
    if (this.find(session.folder)?.keptAs === undefined) this.history.forgetFolder(session.folder);
    this.put(session);
    this.shown = session.folder;
  }

  /** Closes the sessions of the register; those in memory alone stay. */
  closeKept(): void {
    for (const { folder, keptAs } of this.all) if (keptAs !== undefined) this.#close(folder);
    this.history.forgetKept();
  }

  /**
   * Puts a recording into a session, in the register too where it is kept there, with what is answered for it. One of a
   * new name costs the same however many recordings the session has.
   * @param session the session as it was, with this recording
   * @throws RequestRefused where the register does not take it; the session is then as it was
   */
  bringIn(before: StoredSession, session: StoredSession, file: RecordingFile, answers: RecordingAnswers): void {
    const isAnswered = Object.keys(answers).length > 0;
    const entries = before.stated.description.files ?? [];
    const isFresh = [...before.files.map(({ path }) => path), ...entries.map((each) => each.file)].every(
      (path) => path !== file.path,
    );
    if (!isAnswered || !isFresh) {
      this.keepRecording(before, file);
      this.put(session);
      if (!isAnswered) return;
      const paths = session.files.map(({ path }) => path);
      const answered = withAnswers(session.stated.description, [file.path], answers, paths);
      this.change(session, answered, answerWords([file.path]));
      return;
    }
    const { folder, keptAs, stated } = session;
    // Nothing was said of this file yet, so no other entry is touched.
    const after = { ...stated, description: withAnswers(stated.description, [file.path], answers, []) };
    if (keptAs === undefined) {
      this.#nothingSaid();
      this.history.record({ reach: { folder }, words: answerWords([file.path]), before: stated, after });
    } else this.keepRecording(before, file, after.description.files?.at(-1));
    this.put({ ...session, stated: after });
  }

  /**
   * Keeps a recording of a session of the register there; nothing happens for others.
   * @param entry what is stated of it, of which nothing stood in the session before
   */
  keepRecording({ folder, keptAs, files, stated }: StoredSession, file: RecordingFile, entry?: FileEntry): void {
    if (keptAs === undefined || this.#keeper === undefined) return;
    const isNew = files.every(({ path }) => path !== file.path);
    const position = stated.description.files?.length ?? 0;
    const sequence = isNew
      ? this.#keeper.addRecording(keptAs, file, entry && { entry, position })
      : this.#keeper.replaceRecording(keptAs, file);
    if (sequence !== undefined) this.recordKept({ reach: { folder }, words: `Bring ${file.path} in`, sequence });
  }

  /** Lists an action of the register among what can be taken back. */
  recordKept(step: KeptStep): void {
    this.#nothingSaid();
    this.history.record(step);
  }

  /** Reads sessions of the register again; one that is gone closes, one that says the same stays as it is. */
  refreshKept(only?: string): void {
    for (const session of this.all) {
      if (session.keptAs === undefined || (only !== undefined && session.folder !== only)) continue;
      const now = this.#keeper?.read(session.keptAs, session.files);
      if (now === undefined) this.#close(session.folder);
      else if (!saysTheSame(session, now)) this.put({ ...session, ...now });
    }
  }

  /** Remembers that a session's decisions were taken along as its session.json. */
  takenAlong(folder: string): void {
    this.#kept.set(folder, this.get(folder).stated.description);
  }

  /** A step of the register: taken there, then read back from there. */
  #stepKept({ reach }: { readonly reach: StepReach }, take: (keeper: SessionKeeper) => void): void {
    if (this.#keeper === undefined) throw new Error("A step of the register has no register.");
    take(this.#keeper);
    this.#nothingSaid();
    this.refreshKept();
    if ("folder" in reach && this.has(reach.folder)) this.shown = reach.folder;
  }

  #nothingSaid(): void {
    this.effect = "";
    this.stepped = "";
  }

  #close(folder: string): void {
    this.remove(folder);
    if (this.shown === folder) this.shown = listSessions(this.all)[0]?.folder ?? "";
  }

  #state(folder: string, stated: Stated, filesNow: (files: StoredSession["files"]) => StoredSession["files"]): void {
    this.#nothingSaid();
    const session = this.get(folder);
    const description = keepAdded(session.stated.description, stated.description);
    this.put({ ...session, files: filesNow(session.files), stated: { ...stated, description } });
    this.shown = folder;
  }
}

function saysTheSame(
  some: Pick<StoredSession, "files" | "stated" | "earlierMass">,
  other: Pick<StoredSession, "files" | "stated" | "earlierMass">,
): boolean {
  const text = ({ files, stated, earlierMass }: typeof some): string =>
    JSON.stringify([stated, earlierMass, files.map(({ path, sha256 }) => [path, sha256])]);
  return text(some) === text(other);
}

function refill<Key, Value>(map: Map<Key, Value>, content: ReadonlyMap<Key, Value>): void {
  map.clear();
  for (const [key, value] of content) map.set(key, value);
}
