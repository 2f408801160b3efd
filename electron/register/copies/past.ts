import { type Connection, numberOf, type Row, textOf } from "../connection.ts";
import type { Journal } from "../journal.ts";
import type { RecordKind } from "../record-schemas.ts";
import type { RecordKey } from "../record-tables.ts";

/** An entry of the journal. */
export interface Moment {
  readonly sequence: number;
  readonly at: string;
}

/** What of the register's past decides whether a copy is still what it should be. */
export interface Past {
  readonly passphraseChanges: readonly Moment[];
  readonly restorations: readonly Moment[];
  readonly erasures: readonly (Moment & { readonly records: readonly RecordKey[] })[];
  /** Entries of which it cannot be read what they were. */
  readonly unreadable: number;
}

interface Told extends Past {
  readonly until: number;
}

const nothing: Told = { until: 0, passphraseChanges: [], restorations: [], erasures: [], unreadable: 0 };

/** What was read of a journal: entries are only ever added to it, and it goes with its key when the register is locked. */
const told = new WeakMap<Journal, Told>();

/** Whose records are nobody's. */
const clinicsOwn: ReadonlySet<RecordKind> = new Set(["protocols", "settingsDocuments", "copies"]);

/** Reads what the journal's titles say; what was read before is not read again. */
export function pastOf(journal: Journal): Past {
  const before = told.get(journal) ?? nothing;
  let { until, unreadable } = before;
  const [passphraseChanges, restorations, erasures] = [
    [...before.passphraseChanges],
    [...before.restorations],
    [...before.erasures],
  ];
  for (const { sequence, at, title } of journal.titlesAfter(until)) {
    until = sequence;
    if (title === undefined) unreadable += 1;
    if (title?.action === "passphrase changed") passphraseChanges.push({ sequence, at });
    if (title?.action === "restored from a backup") restorations.push({ sequence, at });
    if (title?.action !== "erased") continue;
    const records = (title.erased ?? []).filter(({ kind }) => !clinicsOwn.has(kind));
    if (records.length > 0) erasures.push({ sequence, at, records });
  }
  const past = { until, passphraseChanges, restorations, erasures, unreadable };
  told.set(journal, past);
  return past;
}

/**
 * The moment came after another one: by its place in the journal, or by the clock. Either is enough, so that neither a
 * clock that was wrong nor a restoration, after which places are counted anew, makes an old copy look like a new one.
 */
export function isAfter(moment: Moment, other: Moment): boolean {
  return moment.sequence > other.sequence || moment.at > other.at;
}

/** The entry with which a record came into the register; the journal keeps that when the record is erased. */
export function firstEntryOf(connection: Connection, id: string): Moment | undefined {
  const row = connection.one(
    "SELECT sequence, at FROM journalParts JOIN journal USING (sequence) WHERE record = ? ORDER BY sequence LIMIT 1",
    id,
  );
  return row && momentOf(row);
}

/** The last entry that the journals of a register and of a copy of it have in common. */
export function lastShared(register: Connection, copy: Connection): Moment | undefined {
  const entryOf = (connection: Connection, sequence: number) =>
    connection.one("SELECT sequence, at, hex(hash) AS hash FROM journal WHERE sequence = ?", sequence);
  const lengthOf = (connection: Connection) =>
    numberOf(connection.one("SELECT coalesce(max(sequence), 0) AS length FROM journal") ?? {}, "length");
  // Each hash is one over those before it: where two entries are the same, all before them are.
  let [same, other] = [0, Math.min(lengthOf(register), lengthOf(copy)) + 1];
  while (other - same > 1) {
    const middle = Math.floor((same + other) / 2);
    const [here, there] = [entryOf(register, middle), entryOf(copy, middle)];
    if (here !== undefined && here.hash === there?.hash) same = middle;
    else other = middle;
  }
  const row = entryOf(register, same);
  return row && momentOf(row);
}

function momentOf(row: Row): Moment {
  return { sequence: numberOf(row, "sequence"), at: textOf(row, "at") };
}
