import { Button } from "@mantine/core";
import { countOf } from "../../core/ground/plain-words.ts";
import { isInvolved, type RecordedInjury } from "../../core/sides/involvement.ts";
import type { RecordKey } from "../../electron/register/record-tables.ts";
import type { AthletePage, SessionRecords } from "../../electron/register/register-views.ts";
import { lacksNextDay } from "../cautions/last-response.ts";
import { sinceWords } from "../shell/dates.ts";
import { dateWords } from "../shell/words.ts";

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
        Timeline
      </h2>
      <table className="plain-table timeline">
        <thead className="visually-hidden">
          <tr>
            <th scope="col">Date</th>
            <th scope="col">What</th>
            <th scope="col">Actions</th>
          </tr>
        </thead>
        <tbody>
          {entriesOf(page).map((entry) => {
            const { kind, id, date, what, words } = entry;
            const isShown = kind === "sessions" && id === shown;
            const day = date !== "" ? dateWords(date) : kind === "operations" ? "date not known" : "no date";
            const name = `${what} of ${day}`;
            return (
              <tr key={`${kind} ${id}`} className={isShown ? "selected" : undefined}>
                <th scope="row">
                  {day}
                  {kind === "sessions" && operation !== undefined && date > operation && (
                    <span className="muted timeline-since">
                      {sinceWords(operation, date).replace(" ago", "")} after surgery
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
                      aria-label={`Open ${name}`}
                      disabled={isShown}
                      onClick={() => onOpen(id)}
                    >
                      {isShown ? "Shown" : "Open"}
                    </Button>
                  ) : (
                    canWrite && (
                      <Button
                        size="xs"
                        variant="default"
                        aria-label={`Change ${name}`}
                        onClick={() => onEdit(kind === "injuries" ? "injuries" : "operations", id)}
                      >
                        Change
                      </Button>
                    )
                  )}
                  {canWrite && (
                    <button
                      type="button"
                      className="text-button"
                      aria-label={`Move ${name} to the bin`}
                      onClick={() => onBin({ kind, id })}
                    >
                      To the bin
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {entriesOf(page).length === 0 && <p className="muted panel-foot">Nothing yet.</p>}
    </section>
  );
}

function entriesOf({ injuries, operations, sessions }: AthletePage): readonly Entry[] {
  const entries: readonly Entry[] = [
    ...injuries.map(({ id, content }) => ({
      kind: "injuries" as const,
      id,
      date: content.date ?? "",
      what: "Injury",
      words: [`${content.side} ${content.structure}`, involvementWords(content), content.restrictions]
        .filter(Boolean)
        .join(" · "),
    })),
    ...operations.map(({ id, content }) => ({
      kind: "operations" as const,
      id,
      date: content.date ?? "",
      what: "Operation",
      words: [
        `${content.side} ${content.procedure}`,
        involvementWords(content),
        content.graft && `${content.graft} graft`,
        repairWords(content.repaired),
        content.restrictions && `surgeon: ${content.restrictions}`,
      ]
        .filter(Boolean)
        .join(" · "),
    })),
    ...sessions.map((each) => ({
      kind: "sessions" as const,
      id: each.session.id,
      date: each.session.content.date ?? "",
      what: "Session",
      words: sessionWords(each),
    })),
  ];
  return entries.toSorted((first, second) => (first.date < second.date ? 1 : first.date > second.date ? -1 : 0));
}

/** "knee, involved", "ankle, a caution until 15 Jan 2027". */
function involvementWords(record: RecordedInjury): string {
  const { bodyPart = "body part not stated", involvedFrom, until } = record;
  const from = involvedFrom === undefined ? "" : ` from ${dateWords(involvedFrom)}`;
  const to = until === undefined ? "" : ` until ${dateWords(until)}`;
  return `${bodyPart}, ${isInvolved(record) ? "involved" : "a caution, not involved"}${from}${to}`;
}

function repairWords(repaired: "yes" | "no" | "not known" | undefined): string {
  if (repaired === "yes") return "meniscus or cartilage repaired";
  return repaired === "no" ? "" : "repair of meniscus or cartilage not known";
}

function sessionWords(each: SessionRecords): string {
  const { session, recordings } = each;
  const { milestone, stopped, place } = session.content;
  return [
    milestone,
    place,
    recordings.length === 0 ? "no recordings yet" : countOf(recordings.length, "recording"),
    stopped && `stopped: ${stopped.reason.replace(/\.$/, "")}`,
    lacksNextDay(each) && "next day not entered",
  ]
    .filter(Boolean)
    .join(" · ");
}
