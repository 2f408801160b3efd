import { deflateSync } from "node:zlib";
import type { JournalChange } from "../journal.ts";
import type { RecordKind } from "../record-schemas.ts";
import type { RecordStore } from "../record-store.ts";
import type { RecordKey } from "../record-tables.ts";
import type { Register } from "../register.ts";
import type { SearchedKind } from "../register-views.ts";
import { fewestBytes, type Pattern } from "./byte-search.ts";

/** What was personal in records that are erased, in every form in which a file may hold it. In memory only. */
export interface SearchedValues {
  /** Which kind each value is of, by its number. */
  readonly kinds: readonly SearchedKind[];
  readonly patterns: readonly Pattern[];
  /** How many values of each kind were too short to be looked for. */
  readonly tooShort: readonly SearchedKind[];
  /** Records whose content could not be read any more, so that it could not be looked for. */
  readonly unreadable: number;
}

/** Longer texts and recordings are looked for by pieces of this many bytes. */
const pieceBytes = 48;
/** Pieces of one text or recording; a recording's compressed bytes are then seen on nearly each page they lie on. */
const mostPieces = 64;

/** Gathers what will be looked for, before it is gone. */
export function valuesOf(register: Register, erased: readonly RecordKey[]): SearchedValues {
  const { store, journal } = register.contents;
  const gathered = new Gathered();
  for (const { kind, id } of erased) {
    gathered.readRecord(store, kind, id);
    if (kind === "recordings") gathered.readBytes(store, id);
  }
  const names = new Set(erased.map(({ id }) => id));
  // What a record said before it was changed stands in the journal alone, and in backups.
  const past = journal.readChangesOf(({ id }) => names.has(id));
  for (const { change } of past) gathered.addPast(change);
  return gathered.values();
}

class Gathered {
  readonly #numbers = new Map<string, number>();
  readonly #kinds: SearchedKind[] = [];
  readonly #patterns: Pattern[] = [];
  readonly #tooShort = new Map<string, SearchedKind>();
  #unreadable = 0;

  readRecord(store: RecordStore, kind: RecordKind, id: string): void {
    const row = store.connection.one(`SELECT * FROM ${kind} WHERE id = ?`, id);
    const record = row === undefined ? "unreadable" : store.examine(kind, row);
    if (typeof record === "string") this.#unreadable += 1;
    else this.#addContent(kind, record.content);
  }

  readBytes(store: RecordStore, id: string): void {
    const row = store.connection.one("SELECT * FROM recordings WHERE id = ?", id);
    const recording = row === undefined ? "unreadable" : store.examine("recordings", row);
    // A record that is damaged was counted already.
    if (typeof recording === "string") return;
    const bytes = store.intactBytes(recording);
    if (bytes === undefined) this.#unreadable += 1;
    else this.#addRecording(bytes);
  }

  addPast({ kind, before, after }: JournalChange): void {
    for (const state of [before, after]) if (state !== null) this.#addContent(kind, state.content);
  }

  #addContent(kind: RecordKind, content: unknown): void {
    for (const [is, text] of personalTexts(kind, content)) this.#addText(is, text);
  }

  values(): SearchedValues {
    return {
      kinds: this.#kinds,
      patterns: this.#patterns,
      tooShort: [...this.#tooShort.values()],
      unreadable: this.#unreadable,
    };
  }

  #addText(kind: SearchedKind, text: string): void {
    if (text === "" || this.#numbers.has(`${kind} ${text}`)) return;
    if (Buffer.byteLength(text) < fewestBytes) {
      this.#tooShort.set(`${kind} ${text}`, kind);
      return;
    }
    const value = this.#number(kind, `${kind} ${text}`);
    for (const bytes of formsOf(text)) this.#addPieces(bytes, value);
  }

  #addRecording(bytes: Uint8Array): void {
    const value = this.#number("recording", `recording ${this.#kinds.length}`);
    // As it was imported, and as the register keeps it; without its head, which every compressed file begins with.
    this.#addPieces(bytes, value);
    this.#addPieces(deflateSync(bytes).subarray(2), value);
  }

  #number(kind: SearchedKind, key: string): number {
    const value = this.#kinds.push(kind) - 1;
    this.#numbers.set(key, value);
    return value;
  }

  #addPieces(bytes: Uint8Array, value: number): void {
    for (const piece of piecesOf(bytes)) this.#patterns.push({ bytes: piece, value });
  }
}

/** All of a short value; of a longer one pieces spread over it, so that a rest of it is found too. */
export function piecesOf(bytes: Uint8Array): readonly Uint8Array[] {
  if (bytes.byteLength < fewestBytes) return [];
  if (bytes.byteLength <= pieceBytes) return [Uint8Array.from(bytes)];
  const count = Math.min(mostPieces, Math.ceil(bytes.byteLength / 1024) + 1);
  const step = (bytes.byteLength - pieceBytes) / (count - 1);
  return Array.from({ length: count }, (_, at) => {
    const start = Math.round(at * step);
    // A copy: a view would keep the whole recording in memory.
    return Uint8Array.from(bytes.subarray(start, start + pieceBytes));
  });
}

/** A text as files may hold it: UTF-8, both orders of UTF-16, and as JSON with its signs escaped, composed or not. */
export function formsOf(text: string): readonly Uint8Array[] {
  const forms = new Map<string, Uint8Array>();
  const add = (bytes: Buffer) => forms.set(bytes.toString("latin1"), bytes);
  for (const normal of [text, text.normalize("NFC"), text.normalize("NFD")]) {
    const written = JSON.stringify(normal).slice(1, -1);
    const escaped = written.replaceAll(/[^ -~]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
    for (const each of [normal, written, escaped, escaped.replaceAll(/\\u[0-9a-f]{4}/g, upperCase)]) {
      add(Buffer.from(each));
    }
    add(Buffer.from(normal, "utf16le"));
    add(Buffer.from(normal, "utf16le").swap16());
  }
  return [...forms.values()];
}

function upperCase(escaped: string): string {
  return `\\u${escaped.slice(2).toUpperCase()}`;
}

/** The texts of a record that are about a person and unlike those of others. */
function personalTexts(kind: RecordKind, content: unknown): readonly (readonly [SearchedKind, string])[] {
  if (typeof content !== "object" || content === null) return [];
  return Object.entries(content).flatMap(([field, value]) => textsOf(kind, field, value));
}

/** Fields by name, wherever they stand in a record: what is free text is a note. */
const fieldKinds: Readonly<Record<string, SearchedKind>> = {
  name: "name",
  code: "code",
  birthDate: "date of birth",
  note: "note",
  restrictions: "note",
  text: "note",
};

/** A protocol, a setting and where a copy went are the clinic's own. */
const clinicsOwn: ReadonlySet<RecordKind> = new Set(["protocols", "settingsDocuments", "copies"]);
/** Names and codes in these parts of a record are those of a method, a layout or a finding, not of a person. */
const notPersonal: ReadonlySet<string> = new Set([
  "protocol",
  "limits",
  "references",
  "readingFindings",
  "plates",
  "layout",
  "events",
  "opens",
]);

function textsOf(kind: RecordKind, field: string, value: unknown): readonly (readonly [SearchedKind, string])[] {
  if (clinicsOwn.has(kind) || notPersonal.has(field)) return [];
  if (typeof value === "string") {
    const is = kind === "sessions" && field === "folder" ? "folder" : fieldKinds[field];
    return is === undefined ? [] : [[is, value]];
  }
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([inner, each]) => textsOf(kind, inner, each));
}
