import { useRef } from "react";
import type { TrialEvent } from "../../core/events/event.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { chartMargins } from "../charts/axis-layout.ts";
import type { TimeScale } from "../charts/time-scale.ts";
import { words } from "../words/words.ts";
import { keyStepSeconds, movableEvents, sameEvent, secondsText } from "./event-move.ts";
import { eventWords } from "./event-words.ts";
import type { EventDraftState } from "./use-event-draft.ts";

const prose = words.screens.traceTables;

interface EventOverlayProps {
  readonly trial: TrialResult;
  readonly scale: TimeScale;
  readonly draft: EventDraftState;
}

/** The events over the chart: hairlines with a triangular head, to be dragged or moved with the arrow keys. */
export function EventOverlay({ trial, scale, draft }: EventOverlayProps) {
  return (
    <fieldset className="event-overlay" aria-label={prose.eventsOfTrial}>
      {movableEvents(trial.events).map((event) => (
        <EventHandle
          key={`${event.name} ${event.contactIndex ?? ""}`}
          event={event}
          label={eventWords(event, trial.test)}
          scale={scale}
          draft={draft}
        />
      ))}
    </fieldset>
  );
}

interface EventHandleProps {
  readonly event: TrialEvent;
  readonly label: string;
  readonly scale: TimeScale;
  readonly draft: EventDraftState;
}

function EventHandle({ event, label, scale, draft }: EventHandleProps) {
  /** Pixels between the pointer and the event when it was taken up; absent while nobody holds it. */
  const grip = useRef<number>(undefined);
  const seconds = draft.timeOf(event);
  const pixel = scale.toPixel(seconds);
  if (pixel < chartMargins.left - 1 || pixel > chartMargins.left + scale.width + 1) return null;
  const held = draft.draft !== undefined && sameEvent(draft.draft.event, event);
  const moved = event.from === "edited" || held;
  const bounds = draft.boundsOf(event);

  const onKeyDown = (press: React.KeyboardEvent) => {
    const step = keyDirection(press.key) * keyStepSeconds(press);
    if (step !== 0) draft.nudge(event, step);
    else if (keyStepSeconds(press) === 0 && press.key !== "z") return;
    else if (press.key === "Home") draft.nudge(event, bounds.earliest - seconds);
    else if (press.key === "End") draft.nudge(event, bounds.latest - seconds);
    else if (press.key === "Enter") draft.commit();
    else if (press.key === "Escape") draft.cancel();
    // a move that is not sent yet is taken back here; one that was sent is the workspace's to undo
    else if (press.key === "z" && (press.ctrlKey || press.metaKey) && held) draft.cancel();
    else return;
    press.preventDefault();
    press.stopPropagation();
  };

  return (
    <div
      className={`event-handle${moved ? " event-moved" : ""}`}
      style={{ left: pixel }}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation="horizontal"
      aria-valuemin={bounds.earliest}
      aria-valuemax={bounds.latest}
      aria-valuenow={seconds}
      aria-valuetext={prose.timeAndOrigin(
        secondsText(seconds),
        event.from === "edited" ? prose.movedByHand : prose.detected,
      )}
      onKeyDown={onKeyDown}
      onBlur={draft.commit}
      onPointerDown={(press) => {
        if (press.button !== 0) return;
        grip.current = press.clientX - pixel;
        press.currentTarget.setPointerCapture(press.pointerId);
      }}
      onPointerMove={(move) => {
        if (grip.current !== undefined) draft.moveTo(event, scale.toSeconds(move.clientX - grip.current));
      }}
      onPointerUp={() => {
        grip.current = undefined;
        draft.commit();
      }}
      onPointerCancel={() => {
        grip.current = undefined;
        draft.cancel();
      }}
    >
      <span className="event-grip">
        <svg className="event-head" viewBox="0 0 14 12" aria-hidden="true">
          <path d="M1.2 1 H12.8 L7 11 Z" />
        </svg>
      </span>
      <span className="event-name">{prose.eventAt(label, secondsText(seconds))}</span>
    </div>
  );
}

function keyDirection(key: string): -1 | 0 | 1 {
  if (key === "ArrowRight" || key === "ArrowUp") return 1;
  return key === "ArrowLeft" || key === "ArrowDown" ? -1 : 0;
}
