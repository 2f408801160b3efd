import { type LeftAside, leftAsideWords } from "../../../core/recording/left-aside-words.ts";
import { otherKindOfFile } from "../../files/left-aside/other-kind.ts";
import { freePath } from "../../files/taken-out.ts";
import { RequestRefused } from "../../refusals/request-refused.ts";
import type { ChangeSet } from "../change-set.ts";
import { wordsOf } from "../change-set.ts";
import type { RecordContent, RecordKind } from "../record-schemas.ts";
import { type ReferenceName, type References, referenceKinds, referenceNames } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { type ArchivedRecord, archivedKinds, keyText, recordingName, secondRecordingName } from "./archive-format.ts";
import { Notes } from "./merge-notes.ts";
import { type ArchiveReading, withArchive } from "./read-archive.ts";

/** What came of merging an archive. */
export interface MergedArchive {
  readonly added: number;
  /** There already, and the same. */
  readonly same: number;
  /** There already and different: what the register says stood. */
  readonly kept: number;
  readonly recordings: number;
  readonly notes: readonly string[];
}

/**
 * Takes an archive into the register in one transaction. A record that is there already stays as it is, be it the
 * same or different; nothing comes in twice. People are the same when their identifiers are, or when code and name
 * agree and nothing else contradicts; a code alone never joins two people.
 */
export function mergeArchive(register: Register, path: string, passphrase?: Uint8Array): Promise<MergedArchive> {
  return withArchive(path, passphrase, (archive) => mergeOpened(register, archive));
}

/**
 * The records of one entry of the journal, and so of one step of undo; of a larger archive there are several, because
 * before and after of each stay in memory until their entry is written.
 */
const recordsPerEntry = 20_000;

/** The same for an archive that is open. */
export function mergeOpened(register: Register, archive: ArchiveReading): MergedArchive {
  return register.writes.whole(() => {
    const merging: Merging = {
      register,
      archive,
      names: new Map(),
      notes: new Notes(),
      leftAside: [],
      counts: { added: 0, same: 0, kept: 0, recordings: 0 },
    };
    const records = recordsIn(archive);
    let next = records.next();
    while (!next.done) {
      register.writes.act("archive imported", (changes) => {
        for (let count = 0; count < recordsPerEntry && !next.done; count += 1) {
          takeIn(changes, next.value.kind, next.value.record, merging);
          next = records.next();
        }
      });
    }
    const notRecordings = leftAsideWords(merging.leftAside);
    if (notRecordings !== "") merging.notes.add(`${notRecordings} They lie in the bin.`);
    return { ...merging.counts, notes: merging.notes.all };
  });
}

interface Merging {
  readonly register: Register;
  readonly archive: ArchiveReading;
  /** Where records of the archive are known under another identifier. */
  readonly names: Map<string, string>;
  readonly notes: Notes;
  /** What earlier versions of the program kept as recordings and is none. */
  readonly leftAside: LeftAside[];
  readonly counts: { added: number; same: number; kept: number; recordings: number };
}

function* recordsIn(archive: ArchiveReading) {
  for (const kind of archivedKinds) for (const record of archive.records(kind)) yield { kind, record };
}

function takeIn(changes: ChangeSet, kind: RecordKind, record: ArchivedRecord, merging: Merging): void {
  const { register, names, notes, counts } = merging;
  const references = translated(kind, record, merging);
  checkPresent(kind, references, merging);
  const known = knownAs(kind, record, references, merging);
  if (known === undefined) {
    if (kind !== "recordings") changes.add(kind, references, record.content as RecordContent<typeof kind>, record.id);
    else if (addRecording(changes, record, references, merging)) counts.recordings += 1;
    counts.added += 1;
    return;
  }
  if (known !== record.id) names.set(keyText({ kind, id: record.id }), known);
  const stored = register.contents.store.read(kind, known);
  if (stored?.binned) notes.add(`One of the ${wordsOf(kind)} lies in the bin of the register and stays there.`);
  if (JSON.stringify(stored?.content) === JSON.stringify(record.content)) counts.same += 1;
  else {
    counts.kept += 1;
    notes.add(`One of the ${wordsOf(kind)} is in the register already and differs; the register's stands.`);
  }
}

function translated(kind: RecordKind, { references }: ArchivedRecord, { names }: Merging): References {
  const translate = (name: ReferenceName) => {
    const target = references[name];
    return target === undefined
      ? undefined
      : (names.get(keyText({ kind: referenceKinds[name], id: target })) ?? target);
  };
  const pairs = referenceNames(kind).map((name) => [name, translate(name)] as const);
  return Object.fromEntries(pairs.filter(([, target]) => target !== undefined)) as References;
}

/** @throws RequestRefused when a record hangs on another that neither the archive nor the register holds */
function checkPresent(kind: RecordKind, references: References, { register }: Merging): void {
  for (const name of referenceNames(kind)) {
    const target = references[name];
    if (target === undefined || register.contents.store.read(referenceKinds[name], target) !== undefined) continue;
    throw new RequestRefused(
      `The archive is not complete: one of the ${wordsOf(kind)} belongs to a record that is not in it; nothing of it was used.`,
    );
  }
}

/** The identifier under which a record of the archive is in the register already. */
function knownAs(
  kind: RecordKind,
  record: ArchivedRecord,
  references: References,
  merging: Merging,
): string | undefined {
  const { store } = merging.register.contents;
  if (store.read(kind, record.id) !== undefined) return record.id;
  switch (kind) {
    case "athletes":
      return samePerson(record.content as RecordContent<"athletes">, merging);
    case "sessions":
      return references.athlete === undefined ? undefined : sameSession(record.id, references.athlete, merging);
    case "recordings": {
      const { sha256, path } = record.content as RecordContent<"recordings">;
      const inSession = store.readBy("recordings", "session", references.session ?? "");
      return inSession.find(({ content }) => content.sha256 === sha256 && content.path === path)?.id;
    }
    case "trials": {
      const { number } = record.content as RecordContent<"trials">;
      const ofRecording = store.readBy("trials", "recording", references.recording ?? "");
      return ofRecording.find(({ content }) => content.number === number)?.id;
    }
    default: {
      // Whatever else an athlete has is the same when it says the same.
      if (references.athlete === undefined) return undefined;
      const contentText = JSON.stringify(record.content);
      return store
        .readBy(kind, "athlete", references.athlete)
        .find(({ content }) => JSON.stringify(content) === contentText)?.id;
    }
  }
}

function samePerson(person: RecordContent<"athletes">, { register, notes }: Merging): string | undefined {
  const ofThatCode = register.reads.athletes().filter(({ code }) => code === person.code);
  const same = ofThatCode.find(({ id }) => {
    const known = register.reads.record("athletes", id)?.content;
    const contradicts = (["sex", "birthYear", "birthDate"] as const).some(
      (key) => known?.[key] !== undefined && person[key] !== undefined && known[key] !== person[key],
    );
    return known?.name !== undefined && known.name === person.name && !contradicts;
  });
  if (same === undefined && ofThatCode.length > 0) {
    notes.add(
      `${ofThatCode.length + 1 === 2 ? "Two" : ofThatCode.length + 1} athletes now carry the code ${person.code}; look whether they are one person.`,
    );
  }
  return same?.id;
}

/** A session of the same athlete that holds every recording of the archived one. */
function sameSession(archived: string, athlete: string, { register, archive }: Merging): string | undefined {
  const sums = archive.sumsOf(archived);
  if (sums.length === 0) return undefined;
  const { store } = register.contents;
  return store.readBy("sessions", "athlete", athlete).find(({ id }) => {
    const present = new Set(store.readBy("recordings", "session", id).map(({ content }) => content.sha256));
    return sums.every((sum) => present.has(sum));
  })?.id;
}

/** @returns false for what is no recording: an archive is a copy, so nothing of it is dropped, but this goes to the bin */
function addRecording(changes: ChangeSet, record: ArchivedRecord, references: References, merging: Merging): boolean {
  const { path, sha256, byteLength, ...said } = record.content as RecordContent<"recordings">;
  const { register, archive, notes } = merging;
  const session = record.references.session ?? "";
  const second = secondRecordingName(session, path, record.id);
  const name = archive.listed(second) === undefined ? recordingName(session, path) : second;
  const listed = archive.listed(name);
  // Looked at before it is unpacked.
  if (listed !== undefined && (listed.sha256 !== sha256 || listed.bytes !== byteLength)) {
    throw new RequestRefused(
      `${path} in the archive is not the recording its record describes; nothing of it was used.`,
    );
  }
  const bytes = archive.bytesOf(name);
  const present = register.contents.store.readBy("recordings", "session", references.session ?? "");
  const taken = new Set(present.map(({ content }) => content.path));
  const free = freePath(path, taken);
  if (free !== path) notes.add(`${path} is in the session already with other bytes; the archive's came in as ${free}.`);
  const added = changes.addRecording(references.session ?? "", free, bytes, said, record.id);
  // What somebody said something of was a recording to them.
  const other = said.stated === undefined ? otherKindOfFile(path, bytes) : undefined;
  if (other === undefined) return true;
  merging.leftAside.push({ path, kind: other });
  changes.moveToBin({ kind: "recordings", id: added });
  return false;
}
