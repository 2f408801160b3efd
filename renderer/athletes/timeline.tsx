import { Button } from "@mantine/core";
import { isInvolved, type RecordedInjury } from "../../core/sides/involvement.ts";
import type { RecordKey } from "../../electron/register/record-tables.ts";
import type { AthletePage, SessionRecords } from "../../electron/register/register-views.ts";
import { lacksNextDay } from "../cautions/last-response.ts";
import { sinceWords } from "../shell/dates.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.timeline;
const counts = words.screens.counts;

interface TimelineProps {
  readonly page: AthletePage;
  /** Record of the session that is shown. */
  readonly shown: string | undefined;
  readonly canWrite: boolean;
  readonly onOpen: (session: string) => void;
  readonly onEdit: (kind: "injuries" | "operations", id: string) => void;
  readonly onBin: (key: RecordKey) => void;
}

interface Entry extends RecordKey {
  readonly date: string;
  readonly what: string;
  readonly words: string;
}

/** Injuries, operations and sessions of an athlete, the latest first. */
export function Timeline({ page, shown, canWrite, onOpen, onEdit, onBin }: TimelineProps) {
  const operation = page.operations
    .flatMap(({ content }) => content.date ?? [])
    .toSorted()
    .at(-1);
  return (
    <section className="panel" aria-labelledby="timeline-title">
      <h2 id="timeline-title" className="panel-title panel-head">
        {prose.timeline}
      </h2>
      <table className="plain-table timeline">
        <thead className="visually-hidden">
          <tr>
            <th scope="col">{prose.date}</th>
            <th scope="col">{prose.what}</th>
            <th scope="col">{prose.actions}</th>
          </tr>
        </thead>
        <tbody>
          {entriesOf(page).map((entry) => {
            const { kind, id, date, what, words } = entry;
            const isShown = kind === "sessions" && id === shown;
            const day = date !== "" ? dateWords(date) : kind === "operations" ? prose.dateNotKnown : prose.noDate;
            const name = prose.ofDay(what, day);
            return (
              <tr key={`${kind} ${id}`} className={isShown ? "selected" : undefined}>
                <th scope="row">
                  {day}
                  {kind === "sessions" && operation !== undefined && date > operation && (
                    <span className="muted timeline-since">
                      {prose.afterSurgery(sinceWords(operation, date).replace(prose.agoBehindSpan, ""))}
                    </span>
                  )}
                </th>
                <td>
                  <strong>{what}</strong>
                  {words !== "" && <span className="muted"> · {words}</span>}
                </td>
                <td className="timeline-actions">
                  {kind === "sessions" ? (
                    <Button
                      size="xs"
                      variant="default"
                      aria-label={prose.openOf(name)}
                      disabled={isShown}
                      onClick={() => onOpen(id)}
                    >
                      {isShown ? prose.shown : prose.open}
                    </Button>
                  ) : (
                    canWrite && (
                      <Button
                        size="xs"
                        variant="default"
                        aria-label={prose.changeOf(name)}
                        onClick={() => onEdit(kind === "injuries" ? "injuries" : "operations", id)}
                      >
                        {prose.change}
                      </Button>
                    )
                  )}
                  {canWrite && (
                    <button
                      type="button"
                      className="text-button"
                      aria-label={prose.moveToBin(name)}
                      onClick={() => onBin({ kind, id })}
                    >
                      {prose.toTheBin}
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {entriesOf(page).length === 0 && <p className="muted panel-foot">{prose.nothingYet}</p>}
    </section>
  );
}

function entriesOf({ injuries, operations, sessions }: AthletePage): readonly Entry[] {
  const entries: readonly Entry[] = [
    ...injuries.map(({ id, content }) => ({
      kind: "injuries" as const,
      id,
      date: content.date ?? "",
      what: prose.injury,
      words: [`${content.side} ${content.structure}`, involvementWords(content), content.restrictions]
        .filter(Boolean)
        .join(" · "),
    })),
    ...operations.map(({ id, content }) => ({
      kind: "operations" as const,
      id,
      date: content.date ?? "",
      what: prose.operation,
      words: [
        `${content.side} ${content.procedure}`,
        involvementWords(content),
        content.graft && prose.graft(content.graft),
        repairWords(content.repaired),
        content.restrictions && prose.surgeon(content.restrictions),
      ]
        .filter(Boolean)
        .join(" · "),
    })),
    ...sessions.map((each) => ({
      kind: "sessions" as const,
      id: each.session.id,
      date: each.session.content.date ?? "",
      what: prose.session,
      words: sessionWords(each),
    })),
  ];
  return entries.toSorted((first, second) => (first.date < second.date ? 1 : first.date > second.date ? -1 : 0));
}

/** "knee, involved", "ankle, a caution until 15 Jan 2027". */
function involvementWords(record: RecordedInjury): string {
  const { bodyPart = prose.bodyPartNotStated, involvedFrom, until } = record;
  const from = involvedFrom === undefined ? "" : prose.from(dateWords(involvedFrom));
  const to = until === undefined ? "" : prose.until(dateWords(until));
  return `${bodyPart}, ${isInvolved(record) ? prose.involved : prose.cautionNotInvolved}${from}${to}`;
}

function repairWords(repaired: "yes" | "no" | "not known" | undefined): string {
  if (repaired === "yes") return prose.repaired;
  return repaired === "no" ? "" : prose.repairNotKnown;
}

function sessionWords(each: SessionRecords): string {
  const { session, recordings } = each;
  const { milestone, stopped, place } = session.content;
  return [
    milestone,
    place,
    recordings.length === 0 ? prose.noRecordingsYet : counts.recordings(recordings.length),
    stopped && prose.stopped(stopped.reason.replace(/\.$/, "")),
    lacksNextDay(each) && prose.nextDayNotEntered,
  ]
    .filter(Boolean)
    .join(" · ");
}
