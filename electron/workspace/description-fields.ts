import { eventNames } from "../../core/ground/event-name.ts";
import type { EventEdit } from "../../core/stated/event-edit.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { english } from "../../core/words/english.ts";
import type { StartedFrom } from "../refusals/field-conflict.ts";
import { fieldName, fieldValueWords } from "../refusals/field-words.ts";
import {
  comparableText,
  type FieldChanges,
  type Fields,
  type FieldWords,
  fieldsOf,
  mergeFields,
  placeSeparator,
  withFields,
} from "../refusals/merge-fields.ts";
import { inOrderOfJump, withEntry, withFiles } from "./session-edits.ts";

/**
 * The description with an edit a screen made, which may have begun before somebody else changed something: the fields
 * it changes, one by one, in what is stated now.
 * @throws ChangeConflict where the same fields were changed elsewhere
 */
export function editedDescription(
  now: SessionDescription,
  edit: (description: SessionDescription) => SessionDescription,
  { before, settled }: StartedFrom<SessionDescription>,
): SessionDescription {
  if (before === undefined || comparableText(before) === comparableText(now)) return edit(now);
  const sides = {
    from: fieldsOfDescription(before),
    mine: fieldsOfDescription(edit(before)),
    now: fieldsOfDescription(now),
  };
  return withChanges(now, mergeFields(sides, words, settled));
}

const filesPlace = `files${placeSeparator}`;
const eventsPart = `events${placeSeparator}`;

/** Every part of the session, every part of what is said of each file and trial, every moved event. */
function fieldsOfDescription({ files = [], ...session }: SessionDescription): Fields {
  const fields = new Map(fieldsOf(session));
  for (const { file, trial, events = [], ...said } of files) {
    const place = `${filesPlace}${file}${placeSeparator}${trial ?? ""}${placeSeparator}`;
    for (const [name, value] of fieldsOf(said)) fields.set(place + name, value);
    for (const { name, contactIndex, time } of events) {
      fields.set(`${place}${eventsPart}${name}${placeSeparator}${contactIndex ?? ""}`, time);
    }
  }
  return fields;
}

function withChanges(description: SessionDescription, changes: FieldChanges): SessionDescription {
  const ofSession = [...changes].filter(([place]) => !place.startsWith(filesPlace));
  let changed = withFields(description, new Map(ofSession));
  for (const [place, value] of changes) {
    if (!place.startsWith(filesPlace)) continue;
    const { file, trial, part } = fileField(place);
    const entries = changed.files ?? [];
    const entry = entries.find((each) => each.file === file && each.trial === trial) ?? {
      file,
      ...(trial !== undefined && { trial }),
    };
    changed = withFiles(changed, withEntry(entries, withPart(entry, part, value)));
  }
  return changed;
}

function withPart(entry: FileEntry, part: string, value: unknown): FileEntry {
  if (!part.startsWith(eventsPart)) return withFields(entry, new Map([[part, value]]));
  const event = movedEvent(part);
  const others = (entry.events ?? []).filter(
    (each) => each.name !== event.name || each.contactIndex !== event.contactIndex,
  );
  const events = typeof value === "number" ? inOrderOfJump([...others, { ...event, time: value }]) : others;
  return withFields(entry, new Map([["events", events.length > 0 ? events : undefined]]));
}

function fileField(place: string) {
  const [, file = "", trial = "", ...part] = place.split(placeSeparator);
  return { file, trial: trial === "" ? undefined : Number(trial), part: part.join(placeSeparator) };
}

function movedEvent(part: string): Omit<EventEdit, "time"> {
  const [, written, contact = ""] = part.split(placeSeparator);
  const name = eventNames.find((each) => each === written);
  if (name === undefined) throw new Error(`No event is called ${written}.`);
  return { name, ...(contact !== "" && { contactIndex: Number(contact) }) };
}

const words: FieldWords = {
  place: (place) => {
    if (!place.startsWith(filesPlace)) return fieldName(place);
    const { file, trial, part } = fileField(place);
    const whose = trial === undefined ? file : `${file} trial ${trial}`;
    return `${part.startsWith(eventsPart) ? english.events.label(movedEvent(part).name) : fieldName(part)} of ${whose}`;
  },
  value: (place, value) => {
    const part = place.startsWith(filesPlace) ? fileField(place).part : place;
    if (!part.startsWith(eventsPart)) return fieldValueWords(part, value);
    return typeof value === "number" ? `moved to ${value.toFixed(4)} s` : "as detected";
  },
};
