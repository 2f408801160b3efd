import type { RecordKey, StoredRecord } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { readFact } from "../register-facts.ts";
import type { CopyProtection, KnownCopy } from "../register-views.ts";
import type { Look } from "./look-at.ts";
import { type OpenedCopy, openCopy } from "./open-copy.ts";
import { firstEntryOf, isAfter, type Moment, type Past } from "./past.ts";

/** What protects a copy, and why it is not what a copy of today would be. */
export type Judgement = Pick<KnownCopy, "protection" | "stale">;

type Stale = KnownCopy["stale"];

/** Judges a copy that is a database by what it holds. */
export function judge(register: Register, path: string, past: Past | undefined): Judgement {
  const opened = openCopy(register.connection, path, past?.erasures.flatMap(({ records }) => records) ?? []);
  if (typeof opened === "string") {
    return { protection: "not known", stale: [{ reason: "cannot be opened", sentence: opened }] };
  }
  if (!opened.isOwn) {
    return {
      protection: opened.protection === undefined ? "none" : "a passphrase of its own",
      stale: [{ reason: "another register", sentence: "It is a backup of another register." }],
    };
  }
  const protection = protectionOf(register, opened, past);
  return { protection, stale: [...staleByPassphrase(register, protection), ...staleByHolding(opened, past)] };
}

function protectionOf(register: Register, { protection, shared }: OpenedCopy, past: Past | undefined): CopyProtection {
  if (protection === undefined) return "none";
  if (JSON.stringify(protection) === JSON.stringify(wrappedKeyOf(register))) return "this passphrase";
  // Another data key: the passphrase around it may be the same.
  return past === undefined || shared === undefined ? "not known" : passphraseSince(shared, past);
}

/** What protects the register, or is just being set. */
function wrappedKeyOf(register: Register) {
  const conversion = readFact(register.connection, "conversion");
  return conversion?.to === "passphrase" ? conversion.protection : readFact(register.connection, "protection");
}

/** Whether what was under the register's passphrase at some time is under that of today. */
function passphraseSince(moment: Moment, past: Past): CopyProtection {
  if (past.passphraseChanges.some((each) => isAfter(each, moment))) return "an earlier passphrase";
  // Going back takes the changes since out of the journal, and leaves the passphrase.
  return past.restorations.some((each) => isAfter(each, moment)) ? "not known" : "this passphrase";
}

function staleByPassphrase(register: Register, protection: CopyProtection): Stale {
  if (protection === "an earlier passphrase") {
    return [
      {
        reason: "earlier passphrase",
        sentence: "It is under an earlier passphrase of the register: who knows that one can still read it.",
      },
    ];
  }
  if (protection !== "none" || !register.encrypted) return [];
  return [
    {
      reason: "no passphrase",
      sentence: "The register is under a passphrase and this copy is not: whoever has it can read it.",
    },
  ];
}

function staleByHolding({ holds }: OpenedCopy, past: Past | undefined): Stale {
  const left = past?.erasures.flatMap(({ records }) => records).filter(({ id }) => holds.has(id)) ?? [];
  if (left.length === 0) return [];
  return [
    erasedSince(
      hasPerson(left)
        ? "Somebody who was erased since is still in it."
        : "Records that were erased since are still in it.",
    ),
  ];
}

/** Judges a copy that cannot be looked into by what was noted when it was made. */
export function judgeByNote(register: Register, note: StoredRecord<"copies">, look: Look, past: Past): Judgement {
  const { at } = note.content;
  const made: Moment = { sequence: firstEntryOf(register.connection, note.id)?.sequence ?? 0, at };
  const protection = notedProtection(note, look, made, past);
  return {
    protection,
    stale: [...staleByPassphrase(register, protection), ...staleByErasures(register, note, made, past)],
  };
}

function notedProtection(note: StoredRecord<"copies">, look: Look, made: Moment, past: Past): CopyProtection {
  const { kind, encrypted, sealed = kind === "archive" && encrypted } = note.content;
  if (look.state === "there") return look.holds === "sealed" ? "a passphrase of its own" : "none";
  if (!encrypted) return "none";
  if (sealed) return "a passphrase of its own";
  // Earlier versions did not note which of the two it was.
  return note.content.sealed === undefined ? "not known" : passphraseSince(made, past);
}

function staleByErasures(register: Register, note: StoredRecord<"copies">, made: Moment, past: Past): Stale {
  const since = past.erasures.filter((each) => isAfter(each, made));
  // An archive of one athlete holds nobody else; whose the records were that were erased, nothing tells any more.
  if (note.references.athlete !== undefined) {
    if (since.every(({ records }) => hasPerson(records))) return [];
    return [
      erasedSince("It was made before records were erased: where they were this athlete's, they may still be in it."),
    ];
  }
  const held = since.flatMap(({ records }) => records).filter((record) => mayHold(register, record, made, past));
  if (held.length === 0) return [];
  return [
    erasedSince(
      hasPerson(held)
        ? "It was made before somebody was erased: that person's data may still be in it."
        : "It was made before records were erased: they may still be in it.",
    ),
  ];
}

/** What came into the register later cannot be in a copy of before, unless the journal was put back meanwhile. */
function mayHold(register: Register, { id }: RecordKey, made: Moment, past: Past): boolean {
  const came = firstEntryOf(register.connection, id);
  if (came === undefined || past.restorations.some((each) => isAfter(each, made))) return true;
  return came.sequence < made.sequence || came.at < made.at;
}

function erasedSince(sentence: string): Stale[number] {
  return { reason: "erased since", sentence: `${sentence} Delete it where it is not needed.` };
}

function hasPerson(records: readonly RecordKey[]): boolean {
  return records.some(({ kind }) => kind === "athletes");
}
