import type { TrialEvent } from "../../core/events/event.ts";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { movableEvents, moveKeysWords, withoutEdit } from "./event-move.ts";
import { EventTable } from "./event-table.tsx";
import { HopTable } from "./hop-table.tsx";
import { LimbEvents } from "./limb-events.tsx";
import type { EventDraftState } from "./use-event-draft.ts";
import { weightWords } from "./weight-words.ts";
import { zeroWords } from "./zero-words.ts";

const prose = words.screens.traceTables;

interface EventSectionProps {
  readonly folder: string;
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
  readonly draft: EventDraftState;
}

/** The events in numbers: one column an event, or of repeated hops one row a contact. */
export function EventSection({ folder, trial, involved, draft }: EventSectionProps) {
  const { apply } = useWorkspace();
  const events = movableEvents(trial.events);
  if (events.length === 0) return null;
  const send = (edits: TrialResult["edits"]) => {
    void apply("trials.change", { folder, file: trial.file, trial: trial.trial, change: { events: edits } });
  };
  const reset = (event: TrialEvent) => send(withoutEdit(trial.edits, event));
  return (
    <div className="event-table-place">
      {trial.hops === undefined ? (
        <EventTable events={events} test={trial.test} draft={draft} onReset={reset} />
      ) : (
        <HopTable trial={trial} hops={trial.hops} involved={involved} draft={draft} onReset={reset} />
      )}
      <div aria-live="polite">{draft.note !== "" && <p className="caution finding event-note">{draft.note}</p>}</div>
      <p className="event-foot muted">
        <span>{moveKeysWords}</span>
        {trial.hops === undefined ? (
          <LimbEvents trial={trial} involved={involved} />
        ) : (
          trial.hops.some((hop) => hop.limbs !== undefined) && <span>{prose.howMuchLater}</span>
        )}
        <span>{weightWords(trial)}</span>
        <span>{zeroWords(trial)}</span>
        {trial.edits.length > 1 && (
          <button type="button" className="text-button" onClick={() => send([])}>
            {prose.resetAll}
          </button>
        )}
      </p>
    </div>
  );
}
