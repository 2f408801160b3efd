import { eventLabel, type TrialEvent } from "../../core/events/event.ts";
import { formatValue } from "../../core/format-number.ts";
import type { InvolvedSide } from "../../core/limb.ts";
import type { TrialResult } from "../../core/result.ts";
import { limbRole } from "../shell/limb-role.ts";
import { sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { movableEvents, secondsText, withoutEdit } from "./event-move.ts";
import { EventTimeField } from "./event-time-field.tsx";
import type { EventDraftState } from "./use-event-draft.ts";

interface EventTableProps {
  readonly folder: string;
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
  readonly draft: EventDraftState;
}

/** Every event with its time, where it comes from, and the way back to detected. */
export function EventTable({ folder, trial, involved, draft }: EventTableProps) {
  const { apply } = useWorkspace();
  const events = movableEvents(trial.events);
  if (events.length === 0) return null;
  const send = (edits: TrialResult["edits"]) => {
    const change = { events: edits, eventsBefore: trial.edits };
    void apply("trials.change", { folder, file: trial.file, trial: trial.trial, change });
  };
  return (
    <div className="event-table-place">
      <table className="event-table">
        <caption className="visually-hidden">Events of the trial, times from the first sample</caption>
        <thead>
          <tr>
            <th scope="col">Event</th>
            {events.map((event) => (
              <th key={event.name} scope="col" className="number">
                {eventLabel(event.name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">
              time <span className="unit">s</span>
            </th>
            {events.map((event) => (
              <td key={event.name} className={event.from === "edited" ? "number event-edited" : "number"}>
                <EventTimeField event={event} draft={draft} />
              </td>
            ))}
          </tr>
          <tr className="event-origin">
            <th scope="row" className="muted">
              from
            </th>
            {events.map((event) => (
              <td key={event.name} className="number muted">
                {event.from === "edited" ? (
                  <>
                    moved by hand{" "}
                    <button
                      type="button"
                      className="text-button"
                      aria-label={`Reset ${eventLabel(event.name)} to detected`}
                      onClick={() => send(withoutEdit(trial.edits, event))}
                    >
                      reset
                    </button>
                  </>
                ) : (
                  <>detected{uncertaintyWords(event)}</>
                )}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
      <div aria-live="polite">{draft.note !== "" && <p className="caution finding event-note">{draft.note}</p>}</div>
      <p className="event-foot muted">
        <span>An event with the focus moves by 1 ms with an arrow key, 10 ms with Shift, 0.1 ms with Alt.</span>
        <LimbEvents events={trial.events} involved={involved} />
        {trial.edits.length > 1 && (
          <button type="button" className="text-button" onClick={() => send([])}>
            Reset all events to detected
          </button>
        )}
      </p>
    </div>
  );
}

function uncertaintyWords(event: TrialEvent): string {
  if (event.uncertainty === undefined) return "";
  const milliseconds = event.uncertainty * 1000;
  return ` ± ${formatValue(milliseconds, milliseconds, "1").uncertainty} ms`;
}

/** When each limb left and met its own plate. */
function LimbEvents({ events, involved }: { events: readonly TrialEvent[]; involved: InvolvedSide | undefined }) {
  const names = ["takeoff", "touchdown"] as const;
  return names.map((name) => {
    const ofLimbs = events.filter((event) => event.name === name && event.side !== undefined);
    if (ofLimbs.length === 0) return null;
    return (
      <span key={name}>
        {sentenceCase(eventLabel(name))} of each limb:{" "}
        {ofLimbs.map((event, index) => (
          <span key={event.side}>
            {index > 0 && ", "}
            <span className={`limb-${limbRole(event.side ?? "both", involved)}`}>{event.side}</span>{" "}
            {secondsText(event.time)} s
          </span>
        ))}
        .{" "}
      </span>
    );
  });
}
