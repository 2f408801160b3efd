import { basename, isAbsolute } from "node:path";
import { numberOf } from "../connection.ts";
import type { StoredRecord } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { backupFolder, keptBackups } from "../register-folder.ts";
import type { CopyKind, CopyList, KnownCopy } from "../register-views.ts";
import { type Judgement, judge, judgeByNote } from "./judge-copy.ts";
import { keptChecks, type NotedCheck } from "./kept-checks.ts";
import { type Look, lookAt } from "./look-at.ts";
import { firstEntryOf, type Past, pastOf } from "./past.ts";

/**
 * Every copy that the program knows: those kept beside the register and those that were noted when they were made.
 * Nothing is changed. Of a locked register only the kept ones can be told, and of them less; the list says so.
 */
export function listCopies(register: Register): CopyList {
  const folder = backupFolder(register.file);
  if (register.locked) {
    return { folder, copies: keptCopies(register, undefined).toReversed(), notTold: [lockedWords(register)] };
  }
  const past = pastOf(register.contents.journal);
  const { notes, damaged } = readNotes(register);
  const elsewhere = copiesElsewhere(register, past, notes);
  return {
    folder,
    copies: [...keptCopies(register, past).toReversed(), ...elsewhere.toReversed()],
    notTold: [
      ...(damaged === 0
        ? []
        : ["What was noted of some copies elsewhere is damaged and cannot be read; verifying names it."]),
      ...(past.unreadable === 0
        ? []
        : ["Part of the journal cannot be read: erasures and changes of passphrase may be missing from what is told."]),
    ],
  };
}

function lockedWords(register: Register): string {
  const sql = "SELECT count(*) AS noted FROM copies WHERE binned = 0";
  const noted = numberOf(register.connection.one(sql) ?? {}, "noted");
  return `The register is locked: copies elsewhere are not listed (${noted} noted), nor is it told which copies are under an earlier passphrase and which hold what was erased.`;
}

/** By age, the oldest first. */
function keptCopies(register: Register, past: Past | undefined): readonly KnownCopy[] {
  const checks = keptChecks(register);
  return keptBackups(register.file).map((path) => {
    const name = basename(path);
    const look = lookAt(path, ["database"]);
    const { kind, madeAt } = keptAs(name);
    const left = register.backupTroubles.find((trouble) => trouble.path === path)?.because;
    const judged = look.state === "there" ? judge(register, path, past) : nothingKnown;
    return {
      key: name,
      path,
      kind,
      ...(madeAt !== undefined && { madeAt }),
      ...placeOf(look),
      ...checkedAs(checks.get(name), look),
      ...judged,
      stale: [
        ...judged.stale,
        ...(left === undefined
          ? []
          : [
              {
                reason: "left behind",
                sentence: `It could not be written again: ${left.replace(/\.$/, "")}.`,
              } as const,
            ]),
      ],
    };
  });
}

const nothingKnown: Judgement = { protection: "not known", stale: [] };

const kinds: readonly (readonly [beginning: string, kind: CopyKind])[] = [
  ["daily-", "kept daily"],
  ["before-schema-", "kept before a migration"],
  ["before-restoring-", "kept before a restoration"],
];

/** What the name of a kept backup says. */
function keptAs(name: string): { readonly kind: CopyKind; readonly madeAt?: string } {
  const [, date, time] = /(\d{4}-\d\d-\d\d)T(\d\d-\d\d-\d\d)(?:-\d+)?\.sqlite$/.exec(name) ?? [];
  const kind = kinds.find(([beginning]) => name.startsWith(beginning))?.[1];
  if (kind === undefined || date === undefined || time === undefined) return { kind: "kept, put there by hand" };
  return { kind, madeAt: `${date}T${time.replaceAll("-", ":")}Z` };
}

/** In the order in which they were made. One that was written over another is the one that lies there. */
function copiesElsewhere(register: Register, past: Past, notes: readonly Note[]): readonly KnownCopy[] {
  const latest = new Map(notes.map((note) => [placeKey(note), note]));
  return notes
    .filter((note) => latest.get(placeKey(note)) === note)
    .map((note) => {
      const { content, references, id } = note;
      const { path, at, kind, verifiedAt, found } = content;
      const look = isAbsolute(path) ? lookAt(path, expected[kind]) : handedOver;
      const code = references.athlete && register.reads.record("athletes", references.athlete)?.content.code;
      return {
        key: id,
        path,
        kind: kind === "backup" ? "backup elsewhere" : "archive elsewhere",
        madeAt: at,
        ...placeOf(look),
        ...(verifiedAt !== undefined && found !== undefined && checkedAs({ verifiedAt, found }, look)),
        ...(look.state === "there" && look.holds === "database"
          ? judge(register, path, past)
          : judgeByNote(register, note, look, past)),
        ...(code !== undefined && { athlete: code }),
      };
    });
}

const expected = { backup: ["database", "sealed"], archive: ["archive", "sealed"] } as const;

const handedOver: Look = {
  state: "unreachable",
  because: "It was handed over as a file: where it lies since, only the person who took it knows.",
};

type Note = StoredRecord<"copies">;

/** What was noted of copies and can be read, without the bin, as it came into the journal. */
function readNotes(register: Register): { readonly notes: readonly Note[]; readonly damaged: number } {
  let damaged = 0;
  const read = register.contents.store.readSound("copies", () => {
    damaged += 1;
  });
  const placed = [...read]
    .filter(({ binned }) => !binned)
    .map((note) => ({ note, sequence: firstEntryOf(register.connection, note.id)?.sequence ?? 0 }));
  const notes = placed.toSorted((first, second) => first.sequence - second.sequence).map(({ note }) => note);
  return { notes, damaged };
}

/** Every note about the copy that is listed under a key: those of copies that it was written over, too. */
export function notesOf(register: Register, key: string): readonly Note[] {
  const { notes } = readNotes(register);
  const named = notes.find(({ id }) => id === key);
  return named === undefined ? [] : notes.filter((note) => placeKey(note) === placeKey(named));
}

/** Two files that were handed over under one name are two. */
function placeKey({ id, content }: Note): string {
  return isAbsolute(content.path) ? content.path : id;
}

function placeOf(look: Look): Pick<KnownCopy, "state" | "because" | "byteLength"> {
  return look.state === "there"
    ? { state: "there", byteLength: look.byteLength }
    : { state: "unreachable", because: look.because };
}

function checkedAs(check: NotedCheck | undefined, look: Look): Pick<KnownCopy, "verifiedAt" | "found"> {
  if (check === undefined) return {};
  const { extent, problems, fileChangedAt } = check.found;
  const writtenSince = look.state === "there" && look.fileChangedAt !== fileChangedAt;
  return { verifiedAt: check.verifiedAt, found: { extent, problems, writtenSince } };
}
