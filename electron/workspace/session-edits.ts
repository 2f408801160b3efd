import { eventNames } from "../../core/ground/event-name.ts";
import type { EventEdit } from "../../core/stated/event-edit.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { StatedPlate } from "../../core/stated/stated-plate.ts";
import type {
  AssignedRow,
  RecordingAnswers,
  SessionChange,
  TrialAssignment,
  TrialChange,
} from "../boundary/stated-changes.ts";

/** Event times are kept to a tenth of a millisecond. */
const eventStepsPerSecond = 10_000;

/** Parts of an answer that a session states for all its files too. */
const sessionParts = ["dropHeightMetres", "leadingLeg"] as const;

/**
 * The description with answers joined to the entries of whole files; parts that were not answered stay, those answered
 * with `null` are taken back.
 * @param allFiles every recording of the session: what it states for all of them is handed to those it stays true for
 */
export function withAnswers(
  description: SessionDescription,
  files: readonly string[],
  answers: RecordingAnswers,
  allFiles: readonly string[],
): SessionDescription {
  const { kept, taken } = apart(answers);
  let changed = description;
  for (const part of sessionParts) {
    if (taken.includes(part)) changed = withoutStatement(changed, files, part, allFiles);
  }
  let entries = changed.files ?? [];
  for (const file of files) {
    // What is answered for the whole file is true of each of its trials; what one of them says otherwise is gone.
    for (const entry of entries.filter((each) => each.file === file)) {
      const parts = entry.trial === undefined ? taken : [...taken, ...Object.keys(kept)];
      entries = withEntry(entries, without(entry, parts));
    }
    const before = entries.find((entry) => entry.file === file && entry.trial === undefined) ?? { file };
    entries = withEntry(entries, { ...before, ...kept });
  }
  return withFiles(changed, entries);
}

/**
 * The description with trials assigned, each row its own way: one trial of a file, or all of them where none is named.
 * @param trialNumbers numbers of all trials found in a file
 */
export function withAssignments(
  description: SessionDescription,
  rows: readonly AssignedRow[],
  allFiles: readonly string[],
  trialNumbers: (file: string) => readonly number[],
): SessionDescription {
  let changed = description;
  for (const { file, trial, ...assignment } of rows) {
    if (trial === undefined) changed = withAnswers(changed, [file], assignment, allFiles);
    else changed = withTrialAssigned(changed, file, trial, assignment, trialNumbers(file));
  }
  return changed;
}

/** What the file states for all its trials stays true of the others; this one says its own. */
function withTrialAssigned(
  description: SessionDescription,
  file: string,
  trial: number,
  assignment: TrialAssignment,
  trialNumbers: readonly number[],
): SessionDescription {
  const { kept, taken } = apart(assignment);
  let entries = description.files ?? [];
  const whole = entries.find((entry) => entry.file === file && entry.trial === undefined);
  for (const part of taken) {
    const stated = whole?.[part as keyof TrialAssignment];
    if (whole === undefined || stated === undefined) continue;
    entries = withEntry(entries, without(whole, taken));
    for (const number of trialNumbers) {
      const own = entries.find((entry) => entry.file === file && entry.trial === number) ?? { file, trial: number };
      entries = withEntry(entries, { [part]: stated, ...own });
    }
  }
  const before = entries.find((entry) => entry.file === file && entry.trial === trial) ?? { file, trial };
  return withFiles(description, withEntry(entries, { ...without(before, taken), ...kept }));
}

/** What an answer states, and the names of the parts it takes back. */
function apart(answers: RecordingAnswers): { readonly kept: Partial<FileEntry>; readonly taken: readonly string[] } {
  const parts = Object.entries(answers);
  return {
    kept: Object.fromEntries(parts.filter(([, value]) => value !== null)),
    taken: parts.flatMap(([name, value]) => (value === null ? [name] : [])),
  };
}

function without(entry: FileEntry, parts: readonly string[]): FileEntry {
  const left = Object.entries(entry).filter(([name]) => !parts.includes(name));
  return { ...Object.fromEntries(left), file: entry.file };
}

/** Takes a statement about some files back, wherever it was made: at the files, at their trials or for the session. */
function withoutStatement(
  description: SessionDescription,
  files: readonly string[],
  part: "dropHeightMetres" | "leadingLeg",
  allFiles: readonly string[],
): SessionDescription {
  const { [part]: ofSession, ...session } = description;
  let entries = description.files ?? [];
  for (const entry of entries.filter((each) => files.includes(each.file))) {
    const { [part]: _taken, ...rest } = entry;
    entries = withEntry(entries, rest);
  }
  if (ofSession === undefined) return withFiles(description, entries);
  for (const file of allFiles.filter((each) => !files.includes(each))) {
    const before = entries.find((entry) => entry.file === file && entry.trial === undefined) ?? { file };
    entries = withEntry(entries, { [part]: ofSession, ...before });
  }
  return withFiles(session, entries);
}

/** The description with parts changed; `null` takes a part away. */
export function withSessionChange(description: SessionDescription, change: SessionChange): SessionDescription {
  const kept = Object.entries({ ...description, ...change }).filter(([, value]) => value !== null);
  return Object.fromEntries(kept) as SessionDescription;
}

/**
 * The description with one trial changed. What a file's own entry decided for all its trials is first handed to each
 * of them, so that changing one leaves the others as they were.
 * @param trialNumbers numbers of all trials found in the file.
 */
export function withTrialChange(
  description: SessionDescription,
  file: string,
  trial: number,
  change: TrialChange,
  trialNumbers: readonly number[],
): SessionDescription {
  let entries = handedToTrials(description.files ?? [], file, trialNumbers);
  const before = entries.find((entry) => entry.file === file && entry.trial === trial) ?? { file, trial };
  const { excluded, kept, seen, events, ...rest } = before;
  const after = {
    excluded: change.excluded === undefined ? excluded : change.excluded,
    kept: change.kept ?? kept,
    seen: change.seen ?? seen,
    events: change.events === undefined ? events : inOrderOfJump(change.events),
  };
  entries = withEntry(entries, {
    ...rest,
    ...(after.excluded ? { excluded: after.excluded } : {}),
    ...(after.kept ? { kept: true } : {}),
    ...(after.seen ? { seen: true } : {}),
    ...(after.events && after.events.length > 0 ? { events: after.events } : {}),
  });
  return withFiles(description, entries);
}

/**
 * The description with the feet on the plates of some files stated, for all trials of each; an empty list takes a
 * file's statement away.
 */
export function withStatedPlates(
  description: SessionDescription,
  feetOfFiles: ReadonlyMap<string, readonly StatedPlate[]>,
): SessionDescription {
  let entries = description.files ?? [];
  for (const [file, feet] of feetOfFiles) {
    // A statement is about the whole recording: one that stands at a trial of it would come back.
    for (const { plates: _plates, ...rest } of entries.filter((entry) => entry.file === file)) {
      entries = withEntry(entries, rest);
    }
    if (feet.length === 0) continue;
    const whole = entries.find((entry) => entry.file === file && entry.trial === undefined) ?? { file };
    entries = withEntry(entries, { ...whole, plates: feet });
  }
  return withFiles(description, entries);
}

/** Moves decisions from the entry of the whole file to entries of its trials; an entry of a trial keeps its own. */
function handedToTrials(
  entries: readonly FileEntry[],
  file: string,
  trialNumbers: readonly number[],
): readonly FileEntry[] {
  const whole = entries.find((entry) => entry.file === file && entry.trial === undefined);
  if (whole === undefined) return entries;
  const { excluded, kept, seen, events, ...rest } = whole;
  const decisions = {
    ...(excluded ? { excluded } : {}),
    ...(kept ? { kept } : {}),
    ...(seen ? { seen } : {}),
    ...(events ? { events } : {}),
  };
  if (Object.keys(decisions).length === 0) return entries;
  let handed = withEntry(entries, rest);
  for (const number of trialNumbers) {
    const own = handed.find((entry) => entry.file === file && entry.trial === number) ?? { file, trial: number };
    handed = withEntry(handed, { ...decisions, ...own });
  }
  return handed;
}

/** Puts an entry in the place of the one for the same file and trial; an entry that says nothing is dropped. */
export function withEntry(entries: readonly FileEntry[], entry: FileEntry): readonly FileEntry[] {
  const says = Object.keys(entry).some((name) => name !== "file" && name !== "trial");
  const at = entries.findIndex((each) => each.file === entry.file && each.trial === entry.trial);
  if (at < 0) return says ? [...entries, entry] : entries;
  return says ? entries.with(at, entry) : entries.toSpliced(at, 1);
}

/** The description with these entries, in the order given. */
export function withFiles(description: SessionDescription, files: readonly FileEntry[]): SessionDescription {
  const { files: _before, ...rest } = description;
  return files.length > 0 ? { ...rest, files } : rest;
}

/** In the order of the jump, times to 0.1 ms. */
export function inOrderOfJump(events: readonly EventEdit[]): readonly EventEdit[] {
  const order = (edit: EventEdit) => (edit.contactIndex ?? 0) * eventNames.length + eventNames.indexOf(edit.name);
  return events
    .map((edit) => ({ ...edit, time: Math.round(edit.time * eventStepsPerSecond) / eventStepsPerSecond }))
    .toSorted((first, second) => order(first) - order(second));
}
