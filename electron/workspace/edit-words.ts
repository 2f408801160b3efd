import { countOf } from "../../core/ground/plain-words.ts";
import type { EventEdit } from "../../core/stated/event-edit.ts";
import { english } from "../../core/words/english.ts";
import type { HostApi } from "../boundary/host-api.ts";
import type { AssignedRow, SessionChange, TrialChange } from "../boundary/stated-changes.ts";

const partWords: Readonly<Record<keyof SessionChange, string>> = {
  athlete: "athlete",
  involved: "involved side",
  injury: "injury",
  date: "date",
  milestone: "milestone",
  protocol: "protocol",
  massKg: "body mass",
  plates: "plates",
  operation: "operation",
  stopped: "stop",
  note: "note",
};

/** What a change of a trial does, for undo and redo: "Move take-off, countermovement-both-2.csv trial 1". */
export function trialChangeWords(
  file: string,
  trial: number,
  change: TrialChange,
  eventsBefore: readonly EventEdit[],
): string {
  const deeds: string[] = [];
  if (change.events !== undefined) deeds.push(eventWords(eventsBefore, change.events));
  if (change.excluded !== undefined) deeds.push(change.excluded === null ? "include again" : "exclude");
  if (change.kept !== undefined) deeds.push(change.kept ? "keep" : "hold again");
  if (change.seen !== undefined) deeds.push(change.seen ? "mark as seen" : "mark as not seen");
  return `${capital(deeds.join(" and "))}, ${file} trial ${trial}`;
}

/** What a change of the session's description does: "Change pain and effusion". */
export function sessionChangeWords(change: SessionChange): string {
  const parts = Object.keys(change).map((name) => partWords[name as keyof SessionChange]);
  return `Change ${listed(parts)}`;
}

/** What answers about recordings do: "Answer for jumps.txt" or "Answer for 3 recordings". */
export function answerWords(files: readonly string[]): string {
  return files.length === 1 ? `Answer for ${files[0]}` : `Answer for ${files.length} recordings`;
}

/** What assignments do: "Assign jump.csv" or "Assign 12 trials". */
export function assignWords(rows: readonly AssignedRow[]): string {
  const [row] = rows;
  if (row === undefined || rows.length > 1) return `Assign ${countOf(rows.length, "trial")}`;
  return `Assign ${row.file}${row.trial === undefined ? "" : ` trial ${row.trial}`}`;
}

/** What one decision about several trials does: "Keep 4 trials". */
export function keepOrExcludeWords(decision: Pick<TrialChange, "kept" | "excluded">, trials: number): string {
  const deed = decision.excluded
    ? "Exclude"
    : decision.excluded === null
      ? "Include again"
      : decision.kept
        ? "Keep"
        : "Hold again";
  return `${deed} ${countOf(trials, "trial")}`;
}

/** What a statement about plates does: "Swap the feet of 4 trials". */
export function statedPlatesWords(feet: HostApi["trials.statePlates"]["request"]["feet"], trials: number): string {
  const deed = feet === "swap" ? "Swap the feet" : feet.length === 0 ? "Take back the stated feet" : "State the feet";
  return `${deed} of ${countOf(trials, "trial")}`;
}

function eventWords(before: readonly EventEdit[], after: readonly EventEdit[]): string {
  if (after.length === 0) return "reset events to detected";
  const same = (first: EventEdit, second: EventEdit) =>
    first.name === second.name && first.contactIndex === second.contactIndex;
  const moved = after.filter((edit) => before.find((each) => same(each, edit))?.time !== edit.time);
  const reset = before.filter((edit) => !after.some((each) => same(each, edit)));
  const words = [
    ...(moved.length > 0 ? [`move ${listed(moved.map((edit) => english.events.label(edit.name)))}`] : []),
    ...(reset.length > 0 ? [`reset ${listed(reset.map((edit) => english.events.label(edit.name)))} to detected`] : []),
  ];
  return words.length > 0 ? words.join(" and ") : "keep events";
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
