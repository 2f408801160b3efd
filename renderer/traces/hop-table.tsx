import type { TrialEvent } from "../../core/events/event.ts";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import type { HopResult, TrialResult } from "../../core/result/trial-result.ts";
import { bearerRole } from "../shell/limb-role.ts";
import { Quantity } from "../shell/quantity.tsx";
import { words } from "../words/words.ts";
import { EventOrigin } from "./event-origin.tsx";
import { EventTimeField } from "./event-time-field.tsx";
import { eventWords } from "./event-words.ts";
import { differenceText, type HopRow, hopRows } from "./hop-rows.ts";
import type { EventDraftState } from "./use-event-draft.ts";

const prose = words.screens.traceTables;

interface HopTableProps {
  readonly trial: TrialResult;
  readonly hops: readonly HopResult[];
  readonly involved: InvolvedSide | undefined;
  readonly draft: EventDraftState;
  readonly onReset: (event: TrialEvent) => void;
}

/** Repeated hops, a contact a row: its events, what the flight after it gives, and whether the means use it. */
export function HopTable({ trial, hops, involved, draft, onReset }: HopTableProps) {
  const field = (event: TrialEvent | undefined) =>
    event === undefined ? null : (
      <HopEvent event={event} label={eventWords(event, trial.test)} draft={draft} onReset={onReset} />
    );
  return (
    <table className="hop-table">
      <caption className="visually-hidden">{prose.contactsFromFirstSample}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.contact}</th>
          <th scope="col" className="number">
            {prose.touchdownOf} <span className="unit">{prose.seconds}</span>
          </th>
          <th scope="col" className="number">
            {prose.takeOff} <span className="unit">{prose.seconds}</span>
          </th>
          <th scope="col" className="number">
            {prose.contactOf} <span className="unit">{prose.seconds}</span>
          </th>
          <th scope="col" className="number">
            {prose.flight} <span className="unit">{prose.seconds}</span>
          </th>
          <th scope="col" className="number">
            {prose.height} <span className="unit">{prose.centimetres}</span>
          </th>
          <th scope="col" className="number">
            {prose.index} <span className="unit">{prose.metresPerSecond}</span>
          </th>
          <th scope="col">{prose.inMeans}</th>
        </tr>
      </thead>
      <tbody>
        {hopRows(trial, hops).map((row) => (
          <tr key={row.name} className={row.hop?.used === true ? undefined : "hop-unused"}>
            <th scope="row">{row.name}</th>
            <td className="number">
              {field(row.touchdown)}
              <Later row={row} seconds={row.touchdownDifference} />
            </td>
            <td className="number">
              {field(row.takeoff)}
              <Later row={row} seconds={row.takeoffDifference} />
            </td>
            <HopValues row={row} involved={involved} />
            <td className={row.hop?.used === true ? undefined : "muted"}>{row.words}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface HopValuesProps {
  readonly row: HopRow;
  readonly involved: InvolvedSide | undefined;
}

function HopValues({ row: { hop }, involved }: HopValuesProps) {
  return (
    <>
      <td className="number">
        {hop && <Quantity value={hop.contactTime} unit="s" />}
        {hop?.limbs !== undefined && (
          <span className="hop-limbs">
            {hop.limbs.map((each) => (
              <span key={words.limbs.bearer(each)} className={`limb-${bearerRole(each, involved)}`}>
                {words.limbs.bearer(each)} <Quantity value={each.contactTime} unit="s" />
              </span>
            ))}
          </span>
        )}
      </td>
      <td className="number">{hop && <Quantity value={hop.flightTime} unit="s" />}</td>
      <td className="number">{hop && <Quantity value={hop.jumpHeightFlightTime} unit="m" />}</td>
      <td className="number">{hop && <Quantity value={hop.reactiveStrengthIndex} unit="m/s" />}</td>
    </>
  );
}

/** How much later than the left the right foot lands or leaves, each on its own plate; or the foot on plate 2. */
function Later({ row, seconds }: { readonly row: HopRow; readonly seconds: number | undefined }) {
  if (seconds === undefined) return null;
  return <span className="hop-limbs muted">{prose.laterBy(row.later, differenceText(seconds))}</span>;
}

interface HopEventProps {
  readonly event: TrialEvent;
  readonly label: string;
  readonly draft: EventDraftState;
  readonly onReset: (event: TrialEvent) => void;
}

function HopEvent({ event, label, draft, onReset }: HopEventProps) {
  return (
    <span className={event.from === "edited" ? "event-edited" : undefined}>
      <EventTimeField event={event} label={label} draft={draft} withButtons={false} />
      {event.from === "edited" && (
        <span className="hop-origin muted">
          <EventOrigin event={event} label={label} onReset={() => onReset(event)} />
        </span>
      )}
    </span>
  );
}
