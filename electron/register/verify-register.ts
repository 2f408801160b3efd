import { RequestRefused } from "../refusals/request-refused.ts";
import { athleteLinesOf } from "./athlete-index.ts";
import { type AthleteLines, hasAthleteLines } from "./athlete-lines.ts";
import { sameBytes, sha256Of } from "./checksum.ts";
import { bytesOf, type Connection, numberOf, textOf } from "./connection.ts";
import {
  contentOf,
  entryHash,
  type Journal,
  type JournalChange,
  type JournalTitle,
  noHash,
  noRecord,
  partDigest,
} from "./journal.ts";
import { contentKeyFits, hasContentKeys } from "./keys/content-keys.ts";
import { presentKinds } from "./present-kinds.ts";
import type { RecordStore } from "./record-store.ts";
import { type RecordState, referenceNames } from "./record-tables.ts";
import { readFact, registerId } from "./register-facts.ts";
import type { Verification } from "./register-views.ts";

/** Most sentences of one kind; a register of which every row is damaged needs no list of all. */
const mostSentences = 20;

/**
 * Checks everything that is stored against what was written: SQLite's structure, references, the checksum of every
 * row, the bytes of every recording, the chain of the journal, and every record against the journal's last word on it.
 * @param unlocked false while the key is missing: contents are then left out, and the answer says so
 */
export function verifyRegister(
  store: RecordStore,
  journal: Journal,
  lines: AthleteLines,
  unlocked: boolean,
): Verification {
  const { connection } = store;
  const problems: string[] = [];
  const say = (sentence: string) => {
    if (problems.length < mostSentences) problems.push(sentence);
    else if (problems.length === mostSentences) problems.push("There is more of the kind.");
  };
  const attempt = (work: () => void) => {
    try {
      work();
    } catch (error) {
      if (!(error instanceof RequestRefused)) throw error;
      say(error.message);
    }
  };
  attempt(() => checkStructureAndReferences(connection, say));
  attempt(() => registerId(connection));
  attempt(() => readFact(connection, "protection"));
  let counts = { records: 0, recordings: 0, digests: new Map<string, Uint8Array>() };
  let journalEntries = 0;
  attempt(() => {
    counts = checkRecords(store, unlocked, say);
  });
  attempt(() => {
    journalEntries = checkJournal(connection, journal, unlocked, counts.digests, say);
  });
  attempt(() => checkKeys(connection, journal, unlocked, say));
  attempt(() => checkAthleteLines(store, lines, unlocked, say));
  const { records, recordings } = counts;
  const isKeyed = journal.headKey !== undefined;
  return { problems, records, recordings, journalEntries, contentsChecked: unlocked, isKeyed };
}

type Say = (sentence: string) => void;

function checkStructureAndReferences(connection: Connection, say: Say): void {
  for (const row of connection.all("PRAGMA integrity_check(5)")) {
    const [answer] = Object.values(row);
    if (answer !== "ok") say(`The file's structure is damaged: ${answer}.`);
  }
  for (const row of connection.all("PRAGMA foreign_key_check")) {
    say(`A row of ${textOf(row, "table")} points at something that is not in the register.`);
  }
}

function checkRecords(store: RecordStore, unlocked: boolean, say: Say) {
  const { connection } = store;
  const digests = new Map<string, Uint8Array>();
  let records = 0;
  let recordings = 0;
  for (const kind of presentKinds(connection)) {
    for (const row of connection.each(`SELECT * FROM ${kind}`)) {
      records += 1;
      const id = textOf(row, "id");
      if (!unlocked) {
        if (!store.fitsChecksum(kind, row)) say(`Row ${id} of ${kind} does not fit its checksum.`);
        continue;
      }
      const record = store.examine(kind, row);
      if (record === "checksum") say(`Row ${id} of ${kind} does not fit its checksum.`);
      else if (record === "unreadable") say(`Row ${id} of ${kind} cannot be decrypted.`);
      else digests.set(`${kind} ${id}`, stateDigest(kind, record));
    }
  }
  if (!unlocked) {
    for (const row of connection.each("SELECT * FROM recordingBytes")) {
      recordings += 1;
      if (!store.bytesFitChecksum(row))
        say(`The bytes of recording ${textOf(row, "recording")} do not fit their checksum.`);
    }
    return { records, recordings, digests };
  }
  for (const row of connection.each("SELECT * FROM recordings")) {
    const recording = store.examine("recordings", row);
    if (typeof recording === "string") continue;
    recordings += 1;
    if (store.intactBytes(recording) === undefined) {
      say(`Recording ${recording.id} no longer holds the bytes that were imported.`);
    }
  }
  return { records, recordings, digests };
}

/** Content keys, and the seal of the journal's head; where no passphrase protects the register there is nothing of the kind. */
function checkKeys(connection: Connection, journal: Journal, unlocked: boolean, say: Say): void {
  if (readFact(connection, "protection") === undefined || !hasContentKeys(connection)) return;
  const id = registerId(connection);
  for (const row of connection.each("SELECT * FROM contentKeys")) {
    const keyId = textOf(row, "keyId");
    if (!contentKeyFits(id, row)) say(`The content key ${keyId} does not fit its checksum.`);
    else if (unlocked && !journal.protection.opens(keyId)) say(`The content key ${keyId} cannot be unwrapped.`);
  }
  if (unlocked && !journal.headIsSealed) {
    say(
      "The journal's end does not carry its seal: entries were taken away or added by somebody without the passphrase.",
    );
  }
}

/** The list of athletes against the records it is made from. Lines that are out of step are made anew anyway. */
function checkAthleteLines(store: RecordStore, lines: AthleteLines, unlocked: boolean, say: Say): void {
  // A backup of an earlier schema has none.
  if (!hasAthleteLines(store.connection) || !lines.inStep) return;
  const written = new Map<string, string>();
  for (const row of store.connection.each("SELECT * FROM athleteLines")) {
    const athlete = textOf(row, "athlete");
    const line = unlocked ? lines.readLine(row) : undefined;
    if (!lines.fitsChecksum(row)) say(`The list's line of athlete ${athlete} does not fit its checksum.`);
    else if (unlocked && line === undefined) say(`The list's line of athlete ${athlete} cannot be decrypted.`);
    written.set(athlete, JSON.stringify(line));
  }
  if (!unlocked) return;
  const { lines: expected, damagedRows } = athleteLinesOf(store);
  // What damaged records would say cannot be known; they are named already.
  if (damagedRows > 0) return;
  for (const line of expected) {
    if (written.get(line.id) !== JSON.stringify(line))
      say(`The list's line of athlete ${line.id} is not what the records say.`);
  }
  if (written.size > expected.length) say("The list of athletes holds lines of athletes who are not in the register.");
}

function checkJournal(
  connection: Connection,
  journal: Journal,
  unlocked: boolean,
  digests: ReadonlyMap<string, Uint8Array>,
  say: Say,
): number {
  const emptied = new Map<string, string>();
  const lastWord = new Map<string, Uint8Array>();
  const erased = new Set<string>();
  const everErased = new Set<string>();
  const emptiedWithThem = new Set<string>();
  let previous = noHash;
  let entries = 0;
  for (const row of connection.each("SELECT * FROM journal ORDER BY sequence")) {
    entries += 1;
    const sequence = numberOf(row, "sequence");
    const parts = connection
      .all(
        `SELECT part, record, digest, content FROM journalParts LEFT JOIN journalContents USING (sequence, part)
         WHERE sequence = ? ORDER BY part`,
        sequence,
      )
      .map((each) => ({
        part: numberOf(each, "part"),
        record: textOf(each, "record"),
        digest: bytesOf(each, "digest"),
        content: each.content,
      }));
    const hash = entryHash(previous, sequence, textOf(row, "at"), parts);
    const follows = sequence === entries && sameBytes(bytesOf(row, "previous"), previous);
    if (!follows || !sameBytes(bytesOf(row, "hash"), hash)) say(`Entry ${sequence} of the journal breaks the chain.`);
    previous = bytesOf(row, "hash");
    for (const { part, record, digest, content } of parts) {
      const place = `${sequence} ${part}`;
      if (!(content instanceof Uint8Array)) {
        if (part === 0) say(`Entry ${sequence} of the journal has lost its title.`);
        else emptied.set(place, record);
        continue;
      }
      if (!unlocked) continue;
      const salted = journal.saltedContent(sequence, part, content);
      if (salted === undefined || !sameBytes(partDigest(salted), digest)) {
        say(`Entry ${sequence} of the journal was altered.`);
        continue;
      }
      if (part === 0) {
        const title = contentOf(salted) as JournalTitle;
        for (const { id } of title.erased ?? []) {
          erased.add(id);
          everErased.add(id);
        }
        for (const each of title.emptied ?? []) emptiedWithThem.add(`${each.sequence} ${each.part}`);
      } else if (record !== noRecord) {
        const { kind, id, after } = contentOf(salted) as JournalChange;
        // An archive may have brought an erased record back.
        erased.delete(id);
        lastWord.set(`${kind} ${id}`, stateDigest(kind, after));
      }
    }
  }
  checkHead(connection, entries, previous, say);
  if (!unlocked) return entries;
  for (const [place, record] of emptied) {
    if (!everErased.has(record) && !emptiedWithThem.has(place)) {
      say(`Entry ${place.split(" ")[0]} of the journal lost a content that nobody erased.`);
    }
  }
  const silenced = new Set([...emptied].filter(([place]) => emptiedWithThem.has(place)).map(([, record]) => record));
  checkLastWords(lastWord, digests, erased, silenced, say);
  return entries;
}

function checkHead(connection: Connection, entries: number, hash: Uint8Array, say: Say): void {
  const head = readFact(connection, "journalHead");
  const isHead = head !== undefined && head.sequence === entries && sameBytes(Buffer.from(head.hash, "hex"), hash);
  if (!isHead) say("The journal does not end with its last entry: entries are missing or were added.");
}

function checkLastWords(
  lastWord: ReadonlyMap<string, Uint8Array>,
  digests: ReadonlyMap<string, Uint8Array>,
  erased: ReadonlySet<string>,
  silenced: ReadonlySet<string>,
  say: Say,
): void {
  for (const [key, digest] of lastWord) {
    const [kind = "", id = ""] = key.split(" ");
    if (erased.has(id)) continue;
    const stored = digests.get(key);
    if (stored === undefined) say(`Row ${id} of ${kind} is in the journal but not in the register, or cannot be read.`);
    // Where a word about a record was emptied, it may have been the last.
    else if (!silenced.has(id) && !sameBytes(stored, digest))
      say(`Row ${id} of ${kind} differs from the journal's last word on it.`);
  }
  for (const key of digests.keys()) {
    const [kind = "", id = ""] = key.split(" ");
    if (!lastWord.has(key) && !silenced.has(id)) say(`Row ${id} of ${kind} is in the register but not in the journal.`);
    if (erased.has(id)) say(`Row ${id} of ${kind} was erased and is there again.`);
  }
}

function stateDigest(kind: JournalChange["kind"], { references, binned, content }: RecordState): Uint8Array {
  const targets = referenceNames(kind).map((name) => references[name] ?? null);
  return sha256Of(JSON.stringify([targets, binned, content]));
}
