import { randomBytes } from "node:crypto";
import { storedRowLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { sha256Of } from "./checksum.ts";
import { bytesOf, type Connection, numberOf, textOf } from "./connection.ts";
import type { JournalAction } from "./journal-actions.ts";
import { nobody } from "./keys/content-keys.ts";
import { type FieldProtection, headOf } from "./keys/field-protection.ts";
import { headSeal, sealFits } from "./keys/journal-key.ts";
import { personOf } from "./keys/person-of.ts";
import { type RecordKey, type RecordState, recordTables } from "./record-tables.ts";
import { type Fact, readFact, writeFact } from "./register-facts.ts";

/** The first part of each entry: who did what. */
export interface JournalTitle {
  readonly action: JournalAction;
  readonly who: string;
  /** Who acted, beside the user of the operating system: a name that this person gave. */
  readonly by?: string;
  /** Records that were erased for good. */
  readonly erased?: readonly RecordKey[];
  /** Parts about other records that were emptied with them, because they named an erased athlete. */
  readonly emptied?: readonly { readonly sequence: number; readonly part: number }[];
  /** The entry that was undone or done again. */
  readonly of?: number;
}

/** One record before and after; `null` before: it was new. Nothing but an erasure ends a record. */
export interface JournalChange extends RecordKey {
  readonly before: RecordState | null;
  readonly after: RecordState;
}

/** Stands where a part belongs to no record. */
export const noRecord = "";

/** Before the first entry. */
export const noHash: Uint8Array = new Uint8Array(32);

/** A salt stands before each content, so that short contents cannot be guessed from the digest that stays. */
const saltBytes = 16;

/** The digest under which a salted content stands in the chain. */
export function partDigest(salted: Uint8Array): Uint8Array {
  return sha256Of(salted);
}

/** The hash of an entry over the one before it, its time, and the records and digests of its parts. */
export function entryHash(
  previous: Uint8Array,
  sequence: number,
  at: string,
  parts: readonly { readonly record: string; readonly digest: Uint8Array }[],
): Uint8Array {
  return sha256Of(previous, String(sequence), at, ...parts.flatMap(({ record, digest }) => [record, digest]));
}

/** Where a part's content is written; bound to it when fields are encrypted. */
export function partPlace(registerId: string, sequence: number, part: number): string {
  return JSON.stringify([registerId, "journalContents", sequence, part]);
}

/** The append-only account of every change. Entries are added within the transaction of the change itself. */
export class Journal {
  readonly #connection: Connection;
  readonly #registerId: string;
  readonly #protection: FieldProtection;
  readonly #headKey: Uint8Array | undefined;

  /** @param headKey seals the head, so that only who has the passphrase can end the chain; absent in a plain register */
  constructor(connection: Connection, registerId: string, protection: FieldProtection, headKey?: Uint8Array) {
    this.#connection = connection;
    this.#registerId = registerId;
    this.#protection = protection;
    this.#headKey = headKey;
  }

  get protection(): FieldProtection {
    return this.#protection;
  }

  /** What seals the head. */
  get headKey(): Uint8Array | undefined {
    return this.#headKey;
  }

  /** @returns the entry's place in the chain, counted from 1 */
  append(at: Date, title: JournalTitle, changes: readonly JournalChange[]): number {
    const head = readFact(this.#connection, "journalHead");
    const sequence = (head?.sequence ?? 0) + 1;
    const previous = head === undefined ? noHash : Buffer.from(head.hash, "hex");
    const contents: readonly { readonly record: string; readonly content: unknown }[] = [
      { record: noRecord, content: title },
      ...changes.map((change) => ({ record: change.id, content: change })),
    ];
    const parts = contents.map(({ record, content }) => {
      const salted = Buffer.concat([randomBytes(saltBytes), Buffer.from(JSON.stringify(content))]);
      return { record, salted, digest: partDigest(salted) };
    });
    const time = at.toISOString();
    const hash = entryHash(previous, sequence, time, parts);
    this.#connection.run("INSERT INTO journal VALUES (?, ?, ?, ?)", sequence, time, previous, hash);
    for (const [part, { record, salted, digest }] of parts.entries()) {
      const change = changes[part - 1];
      const person = change ? personOf(this.#connection, change.kind, change.id, change.after.references) : nobody;
      const stored = this.#protection.write(salted, partPlace(this.#registerId, sequence, part), person);
      this.#connection.run("INSERT INTO journalParts VALUES (?, ?, ?, ?)", sequence, part, record, digest);
      this.#connection.run("INSERT INTO journalContents VALUES (?, ?, ?)", sequence, part, stored);
    }
    const written = { sequence, hash: Buffer.from(hash).toString("hex") };
    const seal = this.#sealAfter(head, written);
    writeFact(this.#connection, "journalHead", { ...written, ...(seal !== undefined && { seal }) });
    return sequence;
  }

  /** A head that was altered is never followed by a sealed one: verifying would no longer tell of it. */
  #sealAfter(before: Fact<"journalHead"> | undefined, written: Fact<"journalHead">): string | undefined {
    const key = this.#headKey;
    if (key === undefined || (before !== undefined && !sealFits(key, this.#registerId, before))) return undefined;
    return headSeal(key, this.#registerId, written.sequence, written.hash);
  }

  /** The head is the one that was sealed; in a register without a key there is nothing to tell it by. */
  get headIsSealed(): boolean {
    const head = readFact(this.#connection, "journalHead");
    return this.#headKey !== undefined && head !== undefined && sealFits(this.#headKey, this.#registerId, head);
  }

  /** @returns undefined when the entry is not there or cannot be read */
  readTitle(sequence: number): JournalTitle | undefined {
    const [title] = this.#readParts(sequence, "= 0");
    return title as JournalTitle | undefined;
  }

  /** @returns undefined when parts of the entry were erased since */
  readChanges(sequence: number): readonly JournalChange[] | undefined {
    const count = this.#connection.one(
      "SELECT count(*) AS parts FROM journalParts WHERE sequence = ? AND part > 0",
      sequence,
    );
    const changes = this.#readParts(sequence, "> 0");
    return changes.length === numberOf(count ?? {}, "parts") ? (changes as readonly JournalChange[]) : undefined;
  }

  /** The changes to some records that still have their contents, each with its place. */
  readChangesOf(kindOf: (change: JournalChange) => boolean): readonly PlacedChange[] {
    const found: PlacedChange[] = [];
    for (const row of this.#connection.each("SELECT sequence, part, content FROM journalContents WHERE part > 0")) {
      const sequence = numberOf(row, "sequence");
      const part = numberOf(row, "part");
      const change = this.readContent(sequence, part, bytesOf(row, "content")) as JournalChange | undefined;
      if (change !== undefined && kindOf(change)) found.push({ sequence, part, change });
    }
    return found;
  }

  /** What a stored content says; undefined where it cannot be decrypted at this place. */
  readContent(sequence: number, part: number, stored: Uint8Array): unknown {
    const salted = this.saltedContent(sequence, part, stored);
    return salted === undefined ? undefined : contentOf(salted);
  }

  /** Salt and content as they went into the digest. */
  saltedContent(sequence: number, part: number, stored: Uint8Array): Uint8Array | undefined {
    return this.#protection.read(stored, partPlace(this.#registerId, sequence, part));
  }

  /** Empties the contents and salts of parts about these records; their digests stay in the chain. */
  emptyContentsOf(records: readonly RecordKey[]): void {
    for (const { id } of records) {
      this.#connection.run(
        "DELETE FROM journalContents WHERE (sequence, part) IN (SELECT sequence, part FROM journalParts WHERE record = ?)",
        id,
      );
    }
  }

  emptyContent(sequence: number, part: number): void {
    this.#connection.run("DELETE FROM journalContents WHERE sequence = ? AND part = ?", sequence, part);
  }

  /** Parts that are under some content keys and about other records than these. */
  partsUnder(keyIds: readonly string[], except: ReadonlySet<string>): readonly PlacedPart[] {
    const sql = `SELECT sequence, part, record FROM journalContents JOIN journalParts USING (sequence, part)
      WHERE part > 0 AND substr(content, 1, ?) = ?`;
    return keyIds.flatMap((keyId) => {
      const head = headOf(keyId);
      return this.#connection
        .all(sql, head.byteLength, head)
        .filter((row) => !except.has(textOf(row, "record")))
        .map((row) => ({ sequence: numberOf(row, "sequence"), part: numberOf(row, "part") }));
    });
  }

  /** Writes a content again in the form in which it would be written now. What cannot be read stays as it is. */
  rewrite(sequence: number, part: number): void {
    const sql = `SELECT record, content FROM journalContents JOIN journalParts USING (sequence, part)
      WHERE sequence = ? AND part = ?`;
    const row = this.#connection.one(sql, sequence, part);
    const salted = row && this.saltedContent(sequence, part, bytesOf(row, "content"));
    if (row === undefined || salted === undefined) return;
    const change = part === 0 ? undefined : changeIn(salted);
    const person = change ? personOf(this.#connection, change.kind, change.id, change.after.references) : nobody;
    const stored = this.#protection.write(salted, partPlace(this.#registerId, sequence, part), person);
    this.#connection.run(
      "UPDATE journalContents SET content = ? WHERE sequence = ? AND part = ?",
      stored,
      sequence,
      part,
    );
  }

  /** The newest entries first: when, and what of their titles is still there. */
  readNewest(
    most: number,
  ): readonly { readonly sequence: number; readonly at: string; readonly title?: JournalTitle }[] {
    return this.#connection.all("SELECT sequence, at FROM journal ORDER BY sequence DESC LIMIT ?", most).map((row) => {
      const sequence = numberOf(row, "sequence");
      const title = this.readTitle(sequence);
      return { sequence, at: textOf(row, "at"), ...(title && { title }) };
    });
  }

  /** The entries after one, oldest first: when, and their titles where they can be read. */
  *titlesAfter(
    after: number,
  ): Generator<{ readonly sequence: number; readonly at: string; readonly title?: JournalTitle }> {
    const sql = `SELECT sequence, at, content FROM journal JOIN journalContents USING (sequence)
      WHERE sequence > ? AND part = 0 ORDER BY sequence`;
    for (const row of this.#connection.each(sql, after)) {
      const sequence = numberOf(row, "sequence");
      const title = this.#titleIn(sequence, bytesOf(row, "content"));
      yield { sequence, at: textOf(row, "at"), ...(title && { title }) };
    }
  }

  #titleIn(sequence: number, stored: Uint8Array): JournalTitle | undefined {
    try {
      return this.readContent(sequence, 0, stored) as JournalTitle | undefined;
    } catch (error) {
      if (error instanceof RequestRefused) return undefined;
      throw error;
    }
  }

  #readParts(sequence: number, which: "= 0" | "> 0"): readonly unknown[] {
    return this.#connection
      .all(`SELECT part, content FROM journalContents WHERE sequence = ? AND part ${which} ORDER BY part`, sequence)
      .map((row) => this.readContent(sequence, numberOf(row, "part"), bytesOf(row, "content")))
      .filter((each) => each !== undefined);
  }
}

/** What a salted content says. @throws RequestRefused where it is nothing that this program wrote */
export function contentOf(salted: Uint8Array): unknown {
  try {
    return readJson(salted.subarray(saltBytes), storedRowLimits);
  } catch {
    throw new RequestRefused("Part of the journal is damaged and cannot be read. Restore the newest backup.");
  }
}

/** The change that a salted content tells of; undefined where it was altered and is none. */
function changeIn(salted: Uint8Array): JournalChange | undefined {
  try {
    const said = contentOf(salted) as JournalChange;
    return Object.hasOwn(recordTables, said.kind) && said.after !== undefined ? said : undefined;
  } catch {
    return undefined;
  }
}

interface PlacedPart {
  readonly sequence: number;
  readonly part: number;
}

interface PlacedChange extends PlacedPart {
  readonly change: JournalChange;
}
