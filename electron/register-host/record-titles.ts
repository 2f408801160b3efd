import { wordsOf } from "../register/change-set.ts";
import type { RecordContent, RecordKind } from "../register/record-schemas.ts";
import type { StoredRecord } from "../register/record-tables.ts";
import type { Register } from "../register/register.ts";

/** What a record in the bin is, in words, with whose it is. */
export function binnedTitle(register: Register, record: StoredRecord): string {
  const owner = record.references.athlete;
  const athlete = owner === undefined ? undefined : register.reads.record("athletes", owner)?.content;
  const session = record.references.session;
  const day = session === undefined ? undefined : register.reads.record("sessions", session)?.content.date;
  return [ownTitle(record), athlete === undefined ? "" : `of ${athlete.code}`, day === undefined ? "" : `of ${day}`]
    .filter((part) => part !== "")
    .join(" ");
}

function ownTitle({ kind, content }: StoredRecord): string {
  const of = <Kind extends RecordKind>(_kind: Kind) => content as RecordContent<Kind>;
  switch (kind) {
    case "athletes": {
      const { code, name } = of("athletes");
      return ["Athlete", [code, name].filter((part) => part !== undefined).join(", ")].join(" ");
    }
    case "injuries": {
      const { side, structure, date } = of("injuries");
      return `Injury: ${side} ${structure}, ${date},`;
    }
    case "operations": {
      const { side, procedure, date } = of("operations");
      return `Operation: ${side} ${procedure}, ${date},`;
    }
    case "sessions": {
      const { date, milestone } = of("sessions");
      return ["Session", [date ?? "without a date", milestone].filter((part) => part !== undefined).join(", ")].join(
        " ",
      );
    }
    case "recordings":
      return `Recording ${of("recordings").path}`;
    case "consents":
      return `Consent for ${of("consents").reader}`;
    default:
      return `One of the ${wordsOf(kind)}`;
  }
}
