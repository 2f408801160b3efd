import { createHash } from "node:crypto";
import { deflateSync, inflateSync } from "node:zlib";
import { storedRowLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { sameBytes, sha256Of } from "./checksum.ts";
import { bytesOf, type Connection, numberOf, type Row, textOf } from "./connection.ts";
import { type FieldProtection, headOf } from "./keys/field-protection.ts";
import { personOf } from "./keys/person-of.ts";
import { presentKinds } from "./present-kinds.ts";
import type { RecordContent, RecordKind } from "./record-schemas.ts";
import {
  type RecordKey,
  type RecordState,
  type ReferenceName,
  type References,
  referenceNames,
  type StoredRecord,
} from "./record-tables.ts";

/** What is wrong with a stored row. */
export type RowDamage = "checksum" | "unreadable";

/** Rows of records: written with a checksum over all columns, and read only when it fits. */
export class RecordStore {
  readonly connection: Connection;
  readonly #registerId: string;
  readonly #protection: FieldProtection;

  constructor(connection: Connection, id: string, protection: FieldProtection) {
    this.connection = connection;
    this.#registerId = id;
    this.#protection = protection;
  }

  get protection(): FieldProtection {
    return this.#protection;
  }

  read<Kind extends RecordKind>(kind: Kind, id: string): StoredRecord<Kind> | undefined {
    const row = this.connection.one(`SELECT * FROM ${kind} WHERE id = ?`, id);
    return row && this.#soundRecord(kind, row);
  }

  /** Every record of a kind, the bin included. */
  *readAll<Kind extends RecordKind>(kind: Kind): Generator<StoredRecord<Kind>> {
    for (const row of this.connection.each(`SELECT * FROM ${kind}`)) yield this.#soundRecord(kind, row);
  }

  /** The records of a kind that can be read, the bin included; tells of each that cannot. */
  *readSound<Kind extends RecordKind>(kind: Kind, tellDamaged: () => void): Generator<StoredRecord<Kind>> {
    for (const row of this.connection.each(`SELECT * FROM ${kind}`)) {
      const record = this.#readable(kind, row);
      if (typeof record === "string") tellDamaged();
      else yield record;
    }
  }

  /** The records of a kind that point at another record, outside the bin, in the order they came. */
  readBy<Kind extends RecordKind>(kind: Kind, reference: ReferenceName, id: string): readonly StoredRecord<Kind>[] {
    return this.connection
      .all(`SELECT * FROM ${kind} WHERE ${reference} = ? AND binned = 0 ORDER BY rowid`, id)
      .map((row) => this.#soundRecord(kind, row));
  }

  /** The same, without those that cannot be read. */
  readSoundBy<Kind extends RecordKind>(
    kind: Kind,
    reference: ReferenceName,
    id: string,
  ): readonly StoredRecord<Kind>[] {
    return this.connection
      .all(`SELECT * FROM ${kind} WHERE ${reference} = ? AND binned = 0 ORDER BY rowid`, id)
      .map((row) => this.#readable(kind, row))
      .filter((record) => typeof record !== "string");
  }

  /** The trials of a session's recordings, outside the bin, in the order they came. */
  readTrials(session: string): readonly StoredRecord<"trials">[] {
    const sql = `SELECT * FROM trials WHERE binned = 0
      AND recording IN (SELECT id FROM recordings WHERE session = ? AND binned = 0) ORDER BY rowid`;
    return this.connection.all(sql, session).map((row) => this.#soundRecord("trials", row));
  }

  /** Adds a record or takes the place of what it said before. The content has been checked by its schema. */
  write(kind: RecordKind, id: string, state: RecordState): void {
    const names = referenceNames(kind);
    const targets = names.map((name) => state.references[name] ?? null);
    const place = this.#place(kind, id, state.references, state.binned);
    const person = personOf(this.connection, kind, id, state.references);
    const moves = this.#changesPerson(kind, id, person);
    const content = this.#protection.write(Buffer.from(JSON.stringify(state.content)), place, person);
    const columns = ["id", ...names, "binned", "content", "checksum"];
    const updates = columns.slice(1).map((column) => `${column} = excluded.${column}`);
    this.connection.run(
      `INSERT INTO ${kind} (${columns.join(", ")}) VALUES (${columns.map(() => "?").join(", ")})
       ON CONFLICT (id) DO UPDATE SET ${updates.join(", ")}`,
      id,
      ...targets,
      state.binned ? 1 : 0,
      content,
      sha256Of(place, content),
    );
    if (moves) this.#moveDependents(kind, id);
  }

  /** Keeps the bytes of a recording, compressed; they are never written again. */
  writeBytes(recording: string, bytes: Uint8Array): void {
    const place = this.#bytesPlace(recording);
    const person = personOf(this.connection, "recordings", recording, undefined);
    const stored = this.#protection.write(deflateSync(bytes), place, person);
    this.connection.run("INSERT INTO recordingBytes VALUES (?, ?, ?)", recording, stored, sha256Of(place, stored));
  }

  /**
   * The bytes of a recording exactly as they were imported.
   * @throws RequestRefused when they are not the bytes that were imported
   */
  readBytes(recording: StoredRecord<"recordings">): Uint8Array {
    const bytes = this.intactBytes(recording);
    if (bytes !== undefined) return bytes;
    throw new RequestRefused(
      `The recording ${recording.content.path} is damaged in the register and is not shown. Restore the newest backup.`,
    );
  }

  /** @returns undefined when they are missing or not the bytes that were imported */
  intactBytes({ id, content }: StoredRecord<"recordings">): Uint8Array | undefined {
    const row = this.connection.one("SELECT bytes, checksum FROM recordingBytes WHERE recording = ?", id);
    if (row === undefined) return undefined;
    const place = this.#bytesPlace(id);
    const stored = bytesOf(row, "bytes");
    if (!sameBytes(sha256Of(place, stored), bytesOf(row, "checksum"))) return undefined;
    const compressed = this.#protection.read(stored, place);
    if (compressed === undefined) return undefined;
    const bytes = inflated(compressed, content.byteLength);
    if (bytes === undefined) return undefined;
    return createHash("sha256").update(bytes).digest("hex") === content.sha256 ? bytes : undefined;
  }

  /** True when the stored bytes fit their checksum; needs no key. */
  bytesFitChecksum(row: Row): boolean {
    const place = this.#bytesPlace(textOf(row, "recording"));
    return sameBytes(sha256Of(place, bytesOf(row, "bytes")), bytesOf(row, "checksum"));
  }

  /** What one row says, or what is wrong with it: its checksum and, where it is encrypted, its tag are both looked at. */
  examine<Kind extends RecordKind>(kind: Kind, row: Row): StoredRecord<Kind> | RowDamage {
    return this.fitsChecksum(kind, row) ? this.#open(kind, row) : "checksum";
  }

  /** The same for reading: the tag of an encrypted row says all that its checksum would, so one of them is enough. */
  #readable<Kind extends RecordKind>(kind: Kind, row: Row): StoredRecord<Kind> | RowDamage {
    return this.#protection.proves(bytesOf(row, "content")) ? this.#open(kind, row) : this.examine(kind, row);
  }

  #open<Kind extends RecordKind>(kind: Kind, row: Row): StoredRecord<Kind> | RowDamage {
    const id = textOf(row, "id");
    const references = referencesOf(kind, row);
    const binned = numberOf(row, "binned") === 1;
    const place = this.#place(kind, id, references, binned);
    const plain = this.#protection.read(bytesOf(row, "content"), place);
    if (plain === undefined) return "unreadable";
    try {
      // What fits its checksum is what `write` wrote, and that had passed the schema of its kind.
      const content = readJson(plain, storedRowLimits) as RecordContent<Kind>;
      return { kind, id, references, binned, content };
    } catch {
      // Encrypted fields in a register that says it has no passphrase.
      return "unreadable";
    }
  }

  /** The row's checksum alone; needs no key. */
  fitsChecksum(kind: RecordKind, row: Row): boolean {
    const place = this.#place(kind, textOf(row, "id"), referencesOf(kind, row), numberOf(row, "binned") === 1);
    return sameBytes(sha256Of(place, bytesOf(row, "content")), bytesOf(row, "checksum"));
  }

  /** Writes a record again as it would be written now: in today's form, under the key of whose it is. */
  rewrite(kind: RecordKind, id: string): void {
    const row = this.connection.one(`SELECT * FROM ${kind} WHERE id = ?`, id);
    if (row === undefined) return;
    const references = referencesOf(kind, row);
    const place = this.#place(kind, id, references, numberOf(row, "binned") === 1);
    const stored = bytesOf(row, "content");
    const plain = this.#protection.read(stored, place);
    // What cannot be read stays as it is: verifying names it.
    if (plain === undefined) return;
    const isSound = this.#protection.proves(stored) || this.fitsChecksum(kind, row);
    // Damage must not come to look sound: what does not fit its checksum is kept, at a place where nobody reads it.
    const kept = isSound ? place : `${place} damaged`;
    const content = this.#protection.write(plain, kept, personOf(this.connection, kind, id, references));
    const checksum = sha256Of(kept, content);
    this.connection.run(`UPDATE ${kind} SET content = ?, checksum = ? WHERE id = ?`, content, checksum, id);
  }

  /** The same with the bytes of a recording. Their own SHA-256 tells of damage wherever they lie. */
  rewriteBytes(recording: string): void {
    const row = this.connection.one("SELECT bytes FROM recordingBytes WHERE recording = ?", recording);
    if (row === undefined) return;
    const place = this.#bytesPlace(recording);
    const plain = this.#protection.read(bytesOf(row, "bytes"), place);
    if (plain === undefined) return;
    const stored = this.#protection.write(plain, place, personOf(this.connection, "recordings", recording, undefined));
    const sql = "UPDATE recordingBytes SET bytes = ?, checksum = ? WHERE recording = ?";
    this.connection.run(sql, stored, sha256Of(place, stored), recording);
  }

  /** Records under some content keys. */
  recordsUnder(keyIds: readonly string[]): readonly RecordKey[] {
    return presentKinds(this.connection).flatMap((kind) =>
      this.#under(keyIds, kind, "id", "content").map((id) => ({ kind, id })),
    );
  }

  /** Recordings whose bytes are under some content keys. */
  bytesUnder(keyIds: readonly string[]): readonly string[] {
    return this.#under(keyIds, "recordingBytes", "recording", "bytes");
  }

  #under(keyIds: readonly string[], table: string, key: string, column: string): readonly string[] {
    return keyIds.flatMap((keyId) => {
      const head = headOf(keyId);
      const sql = `SELECT ${key} AS id FROM ${table} WHERE substr(${column}, 1, ?) = ?`;
      return this.connection.all(sql, head.byteLength, head).map((row) => textOf(row, "id"));
    });
  }

  /** A session or a recording that was someone else's until now: what hangs on it must come under its new owner's key. */
  #changesPerson(kind: RecordKind, id: string, person: string): boolean {
    if (kind !== "sessions" && kind !== "recordings") return false;
    const isThere = this.connection.one(`SELECT id FROM ${kind} WHERE id = ?`, id) !== undefined;
    return isThere && personOf(this.connection, kind, id, undefined) !== person;
  }

  #moveDependents(kind: RecordKind, id: string): void {
    const recordings = kind === "recordings" ? [id] : this.#ids("SELECT id FROM recordings WHERE session = ?", id);
    for (const recording of recordings) {
      if (kind !== "recordings") this.rewrite("recordings", recording);
      this.rewriteBytes(recording);
      for (const trial of this.#ids("SELECT id FROM trials WHERE recording = ?", recording))
        this.rewrite("trials", trial);
    }
  }

  #ids(sql: string, of: string): readonly string[] {
    return this.connection.all(sql, of).map((row) => textOf(row, "id"));
  }

  #soundRecord<Kind extends RecordKind>(kind: Kind, row: Row): StoredRecord<Kind> {
    const record = this.#readable(kind, row);
    if (typeof record !== "string") return record;
    throw new RequestRefused(
      "Part of the register is damaged and is not shown. `counterpoise register verify` names it; restore the newest backup.",
    );
  }

  #place(kind: RecordKind, id: string, references: References, binned: boolean): string {
    const targets = referenceNames(kind).map((name) => references[name] ?? null);
    return JSON.stringify([this.#registerId, kind, id, ...targets, binned, "content"]);
  }

  #bytesPlace(recording: string): string {
    return JSON.stringify([this.#registerId, "recordingBytes", recording, "bytes"]);
  }
}

/** Never more than was imported; undefined for bytes that were not compressed by us. */
function inflated(compressed: Uint8Array, byteLength: number): Uint8Array | undefined {
  try {
    return inflateSync(compressed, { maxOutputLength: Math.max(1, byteLength) });
  } catch {
    return undefined;
  }
}

function referencesOf(kind: RecordKind, row: Row): References {
  const targets = referenceNames(kind).map((name) => [name, row[name]] as const);
  return Object.fromEntries(targets.filter(([, target]) => target !== null)) as References;
}
