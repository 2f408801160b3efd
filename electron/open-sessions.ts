import type { RecordingFile } from "../core/recording/file.ts";
import { withCautions } from "./cautions/add-cautions.ts";
import type { WrittenCautions } from "./cautions/caution-addition.ts";
import { keepAdded } from "./cautions/keep-added.ts";
import { EditHistory, type KeptStep, type Stated } from "./edit-history.ts";
import { joinPath, sessionFileName } from "./recording-names.ts";
import { RequestRefused } from "./request-refused.ts";
import type { KeptChange, SessionKeeper } from "./session-keeper.ts";
import { listSessions } from "./session-list.ts";
import type { StoredSession } from "./stored-session.ts";

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
    this.effect = "";
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
      if (this.#keeper.describe(keptAs, description, change)) this.recordKept(words, folder);
      this.refreshKept(folder);
      return;
    }
    const after: Stated = { ...before, description };
    this.effect = "";
    this.history.record({ folder, words, before, after });
    this.put({ ...session, stated: after });
  }

  /** Adds answers, readings or an opening to a session: kept for good, and no step that can be taken back. */
  addCautions(session: StoredSession, added: WrittenCautions): void {
    const description = withCautions(session.stated.description, added);
    const { folder, stated, keptAs } = session;
    this.effect = "";
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
      this.history.record({ folder, words: `Read ${joinPath(folder, sessionFileName)}`, before, after });
    } else this.history.forgetUndone();
  }

  /** Takes the last step back and shows the session it belongs to; nothing happens where there is none. */
  undo(): void {
    const step = this.history.lastDone;
    if (step === undefined) return;
    if ("kept" in step) this.#stepKept(step, (keeper) => keeper.undo());
    else this.#state(step.folder, step.before);
    this.history.undo();
  }

  redo(): void {
    const step = this.history.lastUndone;
    if (step === undefined) return;
    if ("kept" in step) this.#stepKept(step, (keeper) => keeper.redo());
    else this.#state(step.folder, step.after);
    this.history.redo();
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

  /** Keeps a recording of a session of the register there; nothing happens for others. */
  keepRecording({ folder, keptAs }: StoredSession, file: RecordingFile): void {
    if (keptAs === undefined || this.#keeper === undefined) return;
    if (this.#keeper.addRecording(keptAs, file)) this.recordKept(`Bring ${file.path} in`, folder);
  }

  /** Lists an action of the register among what can be taken back. */
  recordKept(words: string, folder?: string): void {
    this.effect = "";
    this.history.record({ kept: true, words, ...(folder !== undefined && { folder }) });
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
  #stepKept({ folder }: KeptStep, take: (keeper: SessionKeeper) => void): void {
    if (this.#keeper === undefined) throw new Error("A step of the register has no register.");
    take(this.#keeper);
    this.effect = "";
    this.refreshKept();
    if (folder !== undefined && this.has(folder)) this.shown = folder;
  }

  #close(folder: string): void {
    this.remove(folder);
    if (this.shown === folder) this.shown = listSessions(this.all)[0]?.folder ?? "";
  }

  #state(folder: string, stated: Stated): void {
    this.effect = "";
    const session = this.get(folder);
    const description = keepAdded(session.stated.description, stated.description);
    this.put({ ...session, stated: { ...stated, description } });
    this.shown = folder;
  }
}

function saysTheSame(
  some: Pick<StoredSession, "files" | "stated">,
  other: Pick<StoredSession, "files" | "stated">,
): boolean {
  const text = ({ files, stated }: Pick<StoredSession, "files" | "stated">): string =>
    JSON.stringify([stated, files.map(({ path, sha256 }) => [path, sha256])]);
  return text(some) === text(other);
}
