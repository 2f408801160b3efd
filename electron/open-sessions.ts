import { EditHistory, type Stated } from "./edit-history.ts";
import { joinPath, sessionFileName } from "./recording-names.ts";
import { RequestRefused } from "./request-refused.ts";
import type { StoredSession } from "./stored-session.ts";

/** The sessions that are open, what was said about them, and the steps that can be taken back. */
export class OpenSessions {
  readonly history = new EditHistory();
  readonly #sessions = new Map<string, StoredSession>();
  /** What was stated about each session when it was read, or last taken along. */
  readonly #kept = new Map<string, Stated["description"]>();
  /** Folder of the session that is shown. */
  shown = "";
  /** Whether the last decision changed a status, in a sentence. */
  effect = "";

  get all(): readonly StoredSession[] {
    return [...this.#sessions.values()];
  }

  get byteLength(): number {
    let total = 0;
    for (const { files } of this.#sessions.values()) for (const { bytes } of files) total += bytes.byteLength;
    return total;
  }

  /** True where something was decided and not taken along. */
  get isUnsaved(): boolean {
    return this.all.some(
      ({ folder, stated }) => JSON.stringify(stated.description) !== JSON.stringify(this.#kept.get(folder) ?? {}),
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
  change(session: StoredSession, description: Stated["description"], words: string): void {
    if (JSON.stringify(description) === JSON.stringify(session.stated.description)) return;
    const { folder, stated: before } = session;
    const after: Stated = { ...before, description };
    this.effect = "";
    this.history.record({ folder, words, before, after });
    this.put({ ...session, stated: after });
  }

  /** What a session.json says takes the place of what was said before, as a step that can be taken back. */
  describe(session: StoredSession, after: Stated): void {
    const { folder, stated: before } = session;
    this.put({ ...session, stated: after });
    this.#kept.set(folder, after.description);
    if (Object.keys(before.description).length > 0) {
      this.history.record({ folder, words: `Read ${joinPath(folder, sessionFileName)}`, before, after });
    } else this.history.forgetUndone();
  }

  /** Takes the last step back and shows the session it belongs to; nothing happens where there is none. */
  undo(): void {
    const step = this.history.undo();
    if (step !== undefined) this.#state(step.folder, step.before);
  }

  redo(): void {
    const step = this.history.redo();
    if (step !== undefined) this.#state(step.folder, step.after);
  }

  /** Remembers that a session's decisions were taken along as its session.json. */
  takenAlong(folder: string): void {
    this.#kept.set(folder, this.get(folder).stated.description);
  }

  #state(folder: string, stated: Stated): void {
    this.effect = "";
    this.put({ ...this.get(folder), stated });
    this.shown = folder;
  }
}
