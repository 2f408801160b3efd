import type { TrialEvent } from "../../core/events/event.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import { words } from "../words/words.ts";
import { EventOrigin } from "./event-origin.tsx";
import { EventTimeField } from "./event-time-field.tsx";
import { eventWords } from "./event-words.ts";
import type { EventDraftState } from "./use-event-draft.ts";

const prose = words.screens.traceTables;

interface EventTableProps {
  /** Those a person may move, in order of time. */
  readonly events: readonly TrialEvent[];
  readonly test: TestKind | undefined;
  readonly draft: EventDraftState;
  readonly onReset: (event: TrialEvent) => void;
}

/** Every event with its time, where it comes from, and the way back to detected. */
export function EventTable({ events, test, draft, onReset }: EventTableProps) {
  const columns = events.map((event) => ({ event, label: eventWords(event, test) }));
  return (
    <table className="event-table">
      <caption className="visually-hidden">{prose.eventsFromFirstSample}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.event}</th>
          {columns.map(({ label }) => (
            <th key={label} scope="col" className="number">
              {label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">
            {prose.time} <span className="unit">{prose.seconds}</span>
          </th>
          {columns.map(({ event, label }) => (
            <td key={label} className={event.from === "edited" ? "number event-edited" : "number"}>
              <EventTimeField event={event} label={label} draft={draft} />
            </td>
          ))}
        </tr>
        <tr className="event-origin">
          <th scope="row" className="muted">
            {prose.from}
          </th>
          {columns.map(({ event, label }) => (
            <td key={label} className="number muted">
              <EventOrigin event={event} label={label} onReset={() => onReset(event)} />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}
