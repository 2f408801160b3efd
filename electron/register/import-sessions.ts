import { leftAsideWords } from "../../core/recording/left-aside-words.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { english } from "../../core/words/english.ts";
import { writtenFinding } from "../../core/words/written-finding.ts";
import { isNamed, otherKindOfFile } from "../files/left-aside/other-kind.ts";
import type { FoundSession } from "../files/read-folder.ts";
import type { ChangeSet } from "./change-set.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { Register } from "./register.ts";
import { describedAthlete, sessionContent, statedFiles } from "./session-conversion.ts";

/** What came of one folder. */
export interface ImportedSession {
  readonly folder: string;
  /** The session's record. */
  readonly session: string;
  readonly outcome: "added" | "completed" | "already there";
  readonly recordings: number;
  /** True where it was stated on import that what was not asked of it is not known. */
  readonly cautionsNotKnown?: boolean;
  /** Plain sentences about what a person should know. */
  readonly notes: readonly string[];
}

/**
 * Takes sessions into the register, each with its recordings in one transaction. A session that is there already
 * (same athlete, date and folder) only gains the recordings it lacks: what was said of it in the register stands.
 */
export function importSessions(register: Register, sessions: readonly FoundSession[]): readonly ImportedSession[] {
  return sessions.map((found) => importSession(register, found));
}

/** Takes one session in. */
export function importSession(register: Register, given: FoundSession): ImportedSession {
  const { found, leftAside } = withRecordingsAlone(withoutTooLarge(given));
  const { description, folder } = found;
  const notes = found.unreadable.map(({ path, reason }) => `${path} was left out because it ${reason}.`);
  if (leftAside !== "") notes.push(leftAside);
  return register.writes.act("recordings imported", (changes) => {
    const athlete = description.athlete && athleteFor(register, changes, description.athlete, notes);
    const known = knownSession(register, athlete, found);
    if (known !== undefined) return complete(register, changes, known, found, notes);
    const own = athlete === undefined ? undefined : register.reads.record("athletes", athlete)?.content;
    const paths = new Set(found.files.map(({ path }) => path));
    const { whole, trials, others } = statedFiles(description.files ?? [], paths);
    const readingFindings = found.descriptionFindings.map((each) => writtenFinding(each, english));
    const content = {
      ...sessionContent({ folder }, description, own, others),
      ...(description.operation !== undefined && { operation: description.operation }),
      ...(readingFindings.length > 0 && { readingFindings }),
    };
    const session = changes.add("sessions", athlete === undefined ? {} : { athlete }, content);
    const recordings = new Map(
      found.files.map(({ path, bytes }) => [path, changes.addRecording(session, path, bytes, whole.get(path))]),
    );
    for (const { path, ...trial } of trials) {
      const recording = recordings.get(path);
      if (recording !== undefined) changes.add("trials", { recording }, trial);
    }
    return { folder, session, outcome: "added" as const, recordings: found.files.length, notes };
  });
}

/** Largest recording a row of the register takes; SQLite holds no more than a thousand million bytes in one. */
const largestRowBytes = 900_000_000;

/** A recording that no row could hold is named, and costs the others of its session nothing. */
function withoutTooLarge(given: FoundSession): FoundSession {
  const fits = ({ bytes }: FoundSession["files"][number]) => bytes.byteLength <= largestRowBytes;
  const reason = "is larger than 900 MB, the most that a register keeps of one recording";
  const tooLarge = given.files.filter((file) => !fits(file)).map(({ path }) => ({ path, reason }));
  return { ...given, files: given.files.filter(fits), unreadable: [...given.unreadable, ...tooLarge] };
}

/** What is no recording never enters a register, by whatever way a session came. */
function withRecordingsAlone(given: FoundSession): { readonly found: FoundSession; readonly leftAside: string } {
  const kinds = new Map(
    given.files.map(({ path, bytes }) => {
      const kind = isNamed(given.description, path) ? undefined : otherKindOfFile(path, bytes);
      return [path, kind] as const;
    }),
  );
  const leftAside = [...kinds].flatMap(([path, kind]) => (kind === undefined ? [] : [{ path, kind }]));
  const files = given.files.filter(({ path }) => kinds.get(path) === undefined);
  return { found: { ...given, files }, leftAside: leftAsideWords(leftAside) };
}

/** The athlete of this code, added where there is none; facts the record lacks are filled in, others stand. */
function athleteFor(
  register: Register,
  changes: ChangeSet,
  stated: NonNullable<SessionDescription["athlete"]>,
  notes: string[],
): string {
  const line = register.reads.athletes().find(({ code }) => code === stated.code);
  if (line === undefined) return changes.add("athletes", {}, stated);
  const record = register.reads.record("athletes", line.id);
  if (record === undefined) throw new Error(`Athlete ${line.id} is listed but not stored.`);
  const known: Readonly<Record<string, unknown>> = describedAthlete(record.content);
  const statedEntries = Object.entries(stated);
  const differing = statedEntries.filter(([key, value]) => known[key] !== undefined && known[key] !== value);
  for (const [key] of differing) {
    notes.push(
      `The session's file gives another ${factWords[key] ?? key} for ${stated.code} than the register; both were kept.`,
    );
  }
  const lacking = Object.fromEntries(statedEntries.filter(([key]) => known[key] === undefined));
  changes.change("athletes", line.id, { ...record.content, ...lacking } as RecordContent<"athletes">);
  return line.id;
}

const factWords: Readonly<Record<string, string>> = { birthYear: "year of birth" };

function knownSession(register: Register, athlete: string | undefined, { folder, description, files }: FoundSession) {
  const sessions =
    athlete === undefined
      ? register.reads.records("sessions").filter(({ references }) => references.athlete === undefined)
      : (register.reads.athletePage(athlete)?.sessions ?? []).map(({ session }) => session);
  const same = sessions.filter(({ content }) => content.folder === folder && content.date === description.date);
  if (athlete !== undefined || description.date !== undefined) return same[0];
  // Without athlete and date, the folder's name alone says too little.
  return same.find(({ id }) => {
    const recordings = register.reads.describedSession(id)?.recordings ?? [];
    return recordings.some(({ content }) => files.some((file) => file.sha256 === content.sha256));
  });
}

function complete(
  register: Register,
  changes: ChangeSet,
  known: { readonly id: string },
  found: FoundSession,
  notes: string[],
): ImportedSession {
  const described = register.reads.describedSession(known.id);
  const present = described?.recordings ?? [];
  let added = 0;
  const { whole } = statedFiles(found.description.files ?? [], new Set(found.files.map(({ path }) => path)));
  for (const { path, bytes, sha256 } of found.files) {
    if (present.some(({ content }) => content.sha256 === sha256)) continue;
    if (present.some(({ content }) => content.path === path)) {
      notes.push(
        `${path} differs from the recording of that name in the register, which was kept; the new one was left out.`,
      );
      continue;
    }
    changes.addRecording(known.id, path, bytes, whole.get(path));
    added += 1;
  }
  const outcome = added > 0 ? "completed" : "already there";
  return { folder: found.folder, session: known.id, outcome, recordings: added, notes };
}
