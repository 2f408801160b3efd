import { clockOf, dayOf } from "../../core/gate/days.ts";
import { type CountedReading, countsForDay } from "../../core/gate/knee-day.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { isWrittenLater, momentWords } from "./moments.ts";

const prose = words.screens.cautionForms;

/** Every reading of a session in the order of writing; what does not count for its day says so. */
export function ReadingsTable({ session }: { readonly session: SessionResult }) {
  const { description, gate } = session;
  const untimed = gate.day.readings.filter(({ meant }) => meant === undefined);
  const readings: readonly CountedReading[] = [...untimed, ...(description.readings ?? [])];
  if (readings.length === 0) return <p className="muted">{prose.noReadingYet}</p>;
  return (
    <table className="plain-table readings">
      <caption className="visually-hidden">{prose.readingsOfPainAndEffusion}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.when}</th>
          <th scope="col">{prose.moment}</th>
          <th scope="col">{prose.pain}</th>
          <th scope="col">{prose.effusion}</th>
          <th scope="col">{prose.readBy}</th>
        </tr>
      </thead>
      <tbody>
        {readings.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings are only ever added at the end
          <tr key={index}>
            <td>{whenWords(each)}</td>
            <td>{each.meant === undefined ? prose.notSaid : momentWords[each.moment]}</td>
            <td>{painWords(each, description.involved === "none")}</td>
            <td>{each.effusion ?? "–"}</td>
            <td>
              {each.by ?? prose.notSaid}
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
  if (meant === undefined) return prose.statedWithoutTime;
  return [dateWords(dayOf(meant)), clockOf(meant)].filter((each) => each !== "").join(", ");
}

function painWords({ pain, where = "knee" }: CountedReading, uninjured: boolean): string {
  if (pain === undefined) return "–";
  if (where === "knee") return uninjured ? String(pain) : prose.painKnee(pain);
  return where === "other leg" ? prose.painOtherLeg(pain) : prose.painElsewhere(pain);
}

function remarkWords(each: CountedReading, date: string | undefined): string {
  const { meant, written } = each;
  return [
    ...(meant !== undefined && written !== undefined && isWrittenLater(meant, written)
      ? [prose.writtenLater(dateWords(dayOf(written)))]
      : []),
    ...(meant === undefined || countsForDay(each, date) ? [] : [prose.ofAnotherDay]),
  ].join(", ");
}
