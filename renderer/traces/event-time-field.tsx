import { useState } from "react";
import type { TrialEvent } from "../../core/events/event.ts";
import { words } from "../words/words.ts";
import { keyStepSeconds, secondsText } from "./event-move.ts";
import type { EventDraftState } from "./use-event-draft.ts";

const prose = words.screens.traceTables;

interface EventTimeFieldProps {
  readonly event: TrialEvent;
  /** The event in words. */
  readonly label: string;
  readonly draft: EventDraftState;
  /** The buttons for a millisecond more or less; the arrow keys do the same. */
  readonly withButtons?: boolean;
}

/** The time of an event as text: written, stepped with the arrow keys, or nudged by a millisecond with the buttons. */
export function EventTimeField({ event, label, draft, withButtons = true }: EventTimeFieldProps) {
  const [written, setWritten] = useState<string>();
  const shown = secondsText(draft.timeOf(event));
  const finish = () => {
    if (written !== undefined) {
      draft.moveToWritten(event, written);
      setWritten(undefined);
    }
    draft.commit();
  };
  return (
    <div className="event-time">
      <input
        type="text"
        inputMode="decimal"
        aria-label={prose.timeOf(label)}
        value={written ?? shown}
        onChange={(change) => setWritten(change.currentTarget.value)}
        onBlur={finish}
        onKeyDown={(press) => {
          const step = keyStepSeconds(press);
          if (step !== 0 && (press.key === "ArrowUp" || press.key === "ArrowDown")) {
            press.preventDefault();
            setWritten(undefined);
            draft.nudge(event, press.key === "ArrowUp" ? step : -step);
          } else if (press.key === "Enter") {
            finish();
          } else if (press.key === "Escape") {
            setWritten(undefined);
            draft.cancel();
          }
        }}
      />
      {withButtons && (
        <span className="event-nudges">
          <button type="button" aria-label={prose.earlier(label)} onClick={() => draft.nudge(event, -0.001)}>
            −
          </button>
          <button type="button" aria-label={prose.later(label)} onClick={() => draft.nudge(event, 0.001)}>
            +
          </button>
        </span>
      )}
    </div>
  );
}
