import { randomUUID } from "node:crypto";
import { recordingFile } from "../files/stored-session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { JournalChange } from "./journal.ts";
import { type RecordContent, type RecordKind, recordSchemas } from "./record-schemas.ts";
import type { RecordStore } from "./record-store.ts";
import {
  type RecordKey,
  type RecordState,
  type References,
  referenceNames,
  type StoredRecord,
} from "./record-tables.ts";

/** The changes of one action of a person; all of them are written in its one transaction. */
export class ChangeSet {
  readonly #store: RecordStore;
  readonly #changes = new Map<string, JournalChange>();

  constructor(store: RecordStore) {
    this.#store = store;
  }

  /** What changed, each record once. */
  get changes(): readonly JournalChange[] {
    return [...this.#changes.values()];
  }

  add<Kind extends RecordKind>(
    kind: Kind,
    references: References,
    content: RecordContent<Kind>,
    id: string = randomUUID(),
  ): string {
    this.write({ kind, id }, { references, binned: false, content });
    return id;
  }

  /** Replaces what a record says; its references stay unless new ones are given. */
  change<Kind extends RecordKind>(kind: Kind, id: string, content: RecordContent<Kind>, references?: References): void {
    const before = this.#existing(kind, id);
    this.write({ kind, id }, { references: references ?? before.references, binned: before.binned, content });
  }

  /** Adds a recording with its bytes, which stay as they are for good. */
  addRecording(
    session: string,
    path: string,
    bytes: Uint8Array,
    said: Pick<RecordContent<"recordings">, "stated" | "position"> = {},
    id: string = randomUUID(),
  ): string {
    const { sha256 } = recordingFile(path, bytes);
    this.add("recordings", { session }, { path, sha256, byteLength: bytes.byteLength, ...said }, id);
    this.#store.writeBytes(id, bytes);
    return id;
  }

  moveToBin({ kind, id }: RecordKey): void {
    this.write({ kind, id }, { ...stateOf(this.#existing(kind, id)), binned: true });
  }

  takeOutOfBin({ kind, id }: RecordKey): void {
    this.write({ kind, id }, { ...stateOf(this.#existing(kind, id)), binned: false });
  }

  /**
   * Writes what a record says from now on.
   * @throws RequestRefused when it says what its kind cannot hold
   */
  write({ kind, id }: RecordKey, { references, binned, content }: RecordState): void {
    const after: RecordState = { references: inColumnOrder(kind, references), binned, content };
    const checked = recordSchemas[kind].safeParse(content);
    if (!checked.success) {
      const [issue] = checked.error.issues;
      throw new RequestRefused(
        `This cannot be kept among the ${wordsOf(kind)}: ${issue?.path.join(".") ?? ""} ${issue?.message ?? ""}`.trim(),
      );
    }
    const stored = this.#store.read(kind, id);
    const known = this.#changes.get(`${kind} ${id}`);
    const before = known === undefined ? (stored === undefined ? null : stateOf(stored)) : known.before;
    if (stored !== undefined && JSON.stringify(stateOf(stored)) === JSON.stringify(after)) return;
    this.#store.write(kind, id, after);
    this.#changes.set(`${kind} ${id}`, { kind, id, before, after });
  }

  #existing<Kind extends RecordKind>(kind: Kind, id: string): StoredRecord<Kind> {
    const record = this.#store.read(kind, id);
    if (record === undefined) throw new RequestRefused("This is no longer in the register; nothing was changed.");
    return record;
  }
}

function inColumnOrder(kind: RecordKind, references: References): References {
  const given = referenceNames(kind).filter((name) => references[name] !== undefined);
  return Object.fromEntries(given.map((name) => [name, references[name]])) as References;
}

/** What a record says, apart from its name. */
export function stateOf({ references, binned, content }: StoredRecord): RecordState {
  return { references, binned, content };
}

/** "enteredFindings" in words. */
export function wordsOf(kind: RecordKind): string {
  return kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
