import { clockOf, dayOf } from "../../core/gate/days.ts";
import { type CountedReading, countsForDay } from "../../core/gate/knee-day.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { dateWords } from "../shell/words.ts";
import { isWrittenLater, momentWords } from "./moments.ts";

/** Every reading of a session in the order of writing; what does not count for its day says so. */
export function ReadingsTable({ session }: { readonly session: SessionResult }) {
  const { description, gate } = session;
  const untimed = gate.day.readings.filter(({ meant }) => meant === undefined);
  const readings: readonly CountedReading[] = [...untimed, ...(description.readings ?? [])];
  if (readings.length === 0) return <p className="muted">No reading of pain or effusion yet.</p>;
  return (
    <table className="plain-table readings">
      <caption className="visually-hidden">Readings of pain and effusion</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">Moment</th>
          <th scope="col">Pain, 0 to 10</th>
          <th scope="col">Effusion</th>
          <th scope="col">Read by</th>
        </tr>
      </thead>
      <tbody>
        {readings.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings are only ever added at the end
          <tr key={index}>
            <td>{whenWords(each)}</td>
            <td>{each.meant === undefined ? "not said" : momentWords[each.moment]}</td>
            <td>{painWords(each, description.involved === "none")}</td>
            <td>{each.effusion ?? "–"}</td>
            <td>
              {each.by ?? "not said"}
              {remarkWords(each, description.date) !== "" && (
                <span className="muted"> · {remarkWords(each, description.date)}</span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function whenWords({ meant }: CountedReading): string {
  if (meant === undefined) return "stated without a time";
  return [dateWords(dayOf(meant)), clockOf(meant)].filter((each) => each !== "").join(", ");
}

function painWords({ pain, where = "knee" }: CountedReading, uninjured: boolean): string {
  if (pain === undefined) return "–";
  if (where === "knee") return uninjured ? String(pain) : `${pain}, knee`;
  return where === "other leg" ? `${pain}, other leg` : `${pain}, elsewhere`;
}

function remarkWords(each: CountedReading, date: string | undefined): string {
  const { meant, written } = each;
  return [
    ...(meant !== undefined && written !== undefined && isWrittenLater(meant, written)
      ? [`written later, ${dateWords(dayOf(written))}`]
      : []),
    ...(meant === undefined || countsForDay(each, date) ? [] : ["of another day: it counts against jumping only"]),
  ].join(", ");
}
