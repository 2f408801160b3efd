import { useCallback, useEffect, useRef, useState } from "react";
import { isOfLimb, type TrialEvent } from "../../core/events/event.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { clampEvent, type EventBounds, eventBounds, sameEvent, withEdit } from "./event-move.ts";
import { clampedWords, eventWords, noTimeWords, secondsFrom } from "./event-words.ts";

/** How long the keys must rest before a nudged event is sent: a run of key presses is one gesture, one undo step. */
const restMilliseconds = 700;

/** An event on its way: drawn where the person holds it, not yet sent. */
export interface EventDraft {
  readonly event: TrialEvent;
  readonly seconds: number;
}

export interface EventDraftState {
  readonly draft: EventDraft | undefined;
  /** Where the event stands for the person: at the draft, else at its own time. */
  readonly timeOf: (event: TrialEvent) => number;
  readonly boundsOf: (event: TrialEvent) => EventBounds;
  /** Why an event did not go where it was sent, one sentence; "" when it did. */
  readonly note: string;
  readonly moveTo: (event: TrialEvent, seconds: number) => void;
  /** Moves to a time as a person wrote it; says so where it is none. */
  readonly moveToWritten: (event: TrialEvent, written: string) => void;
  /** Moves by a step and sends when the keys rest. */
  readonly nudge: (event: TrialEvent, stepSeconds: number) => void;
  readonly commit: () => void;
  readonly cancel: () => void;
}

/** Holds the event being moved in one trial and sends it as one change. */
export function useEventDraft(folder: string, trace: TrialTrace): EventDraftState {
  const { apply } = useWorkspace();
  const { trial } = trace;
  const [draft, setDraft] = useState<EventDraft>();
  const [note, setNote] = useState("");
  const held = useRef<EventDraft | undefined>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);

  const hold = useCallback((next: EventDraft | undefined) => {
    held.current = next;
    setDraft(next);
  }, []);

  const commit = useCallback(() => {
    clearTimeout(timer.current);
    const sent = held.current;
    if (sent === undefined) return;
    held.current = undefined;
    const current = trial.events.find((each) => !isOfLimb(each) && sameEvent(each, sent.event));
    if (current === undefined || current.time === sent.seconds) {
      setDraft(undefined);
      return;
    }
    const events = withEdit(trial.edits, sent.event, sent.seconds);
    void apply("trials.change", { folder, file: trial.file, trial: trial.trial, change: { events } }).then(() =>
      setDraft((shown) => (shown === sent ? undefined : shown)),
    );
  }, [apply, folder, trial]);

  const timeOf = useCallback(
    (event: TrialEvent) => (draft !== undefined && sameEvent(draft.event, event) ? draft.seconds : event.time),
    [draft],
  );
  const boundsOf = useCallback(
    (event: TrialEvent) => {
      const startSeconds = trace.startSample / trace.rateHz;
      const endSeconds = startSeconds + (trace.total.length - 1) / trace.rateHz;
      return eventBounds(trial.events, event, { startSeconds, endSeconds });
    },
    [trace, trial],
  );
  const moveTo = useCallback(
    (event: TrialEvent, seconds: number) => {
      clearTimeout(timer.current);
      if (held.current !== undefined && !sameEvent(held.current.event, event)) commit();
      const bounds = boundsOf(event);
      const kept = clampEvent(seconds, bounds);
      setNote(clampedWords(eventWords(event, trial.test), seconds, kept, bounds));
      hold({ event, seconds: kept });
    },
    [boundsOf, commit, hold, trial.test],
  );
  const moveToWritten = useCallback(
    (event: TrialEvent, written: string) => {
      const seconds = secondsFrom(written);
      if (seconds === undefined) setNote(noTimeWords(eventWords(event, trial.test), written, timeOf(event)));
      else moveTo(event, seconds);
    },
    [moveTo, timeOf, trial.test],
  );
  const nudge = useCallback(
    (event: TrialEvent, stepSeconds: number) => {
      moveTo(event, timeOf(event) + stepSeconds);
      timer.current = setTimeout(commit, restMilliseconds);
    },
    [moveTo, timeOf, commit],
  );
  const cancel = useCallback(() => {
    clearTimeout(timer.current);
    setNote("");
    hold(undefined);
  }, [hold]);

  // a nudge that was not yet sent is sent when the trial is left
  const leaving = useRef(commit);
  leaving.current = commit;
  useEffect(() => () => leaving.current(), []);

  return { draft, timeOf, boundsOf, note, moveTo, moveToWritten, nudge, commit, cancel };
}
