import { kneeDay } from "../../core/gate/knee-day.ts";
import { effusionRank } from "../../core/gate/limits.ts";
import { nextDayConcerns } from "../../core/gate/next-day.ts";
import { listInWords } from "../../core/ground/plain-words.ts";
import type { EffusionGrade } from "../../core/stated/gate-words.ts";
import type { RecordContent } from "../../electron/register/record-schemas.ts";
import type { AthletePage, SessionRecords } from "../../electron/register/register-views.ts";
import { today } from "../shell/dates.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

type SessionContent = RecordContent<"sessions">;

/**
 * What is asked about the day after the last session before a date, a sentence; "" where it was entered and rose
 * nowhere, or where there was no session in which anybody jumped.
 */
export function lastResponseQuestion({ sessions }: Pick<AthletePage, "sessions">, date: string): string {
  const last = sessions.findLast(
    ({ session, recordings }) =>
      recordings.length > 0 && session.content.date !== undefined && session.content.date < date,
  )?.session.content;
  if (last?.date === undefined) return "";
  const concerns = nextDayConcerns(dayOfRecord(last));
  return concerns.length === 0 ? "" : prose.dayAfterSession(dateWords(last.date), listInWords(concerns));
}

/** True where somebody jumped, somebody may be injured, and nobody entered how the knee was the day after. */
export function lacksNextDay({ session: { content }, recordings }: SessionRecords, now = new Date()): boolean {
  const { date, involved } = content;
  if (date === undefined || date >= today(now) || involved === "none" || recordings.length === 0) return false;
  const { nextDayPain, nextDayEffusion } = dayOfRecord(content);
  return nextDayPain === undefined && nextDayEffusion === undefined;
}

/** The readings of a record, with what earlier versions kept by its moment alone. */
function dayOfRecord({ date, readings, pain, effusion }: SessionContent) {
  const day = kneeDay({ ...(date !== undefined && { date }), ...(readings !== undefined && { readings }) });
  const knee = worst(day.knee, pain?.before, pain?.during, pain?.after);
  const swelling = worstGrade(day.effusion, effusion?.before, effusion?.during, effusion?.after);
  const nextDayPain = worst(day.nextDayPain, pain?.nextDay);
  const nextDayEffusion = worstGrade(day.nextDayEffusion, effusion?.nextDay);
  return {
    ...day,
    ...(knee !== undefined && { knee }),
    ...(swelling !== undefined && { effusion: swelling }),
    ...(nextDayPain !== undefined && { nextDayPain }),
    ...(nextDayEffusion !== undefined && { nextDayEffusion }),
  };
}

function worst(...pains: readonly (number | undefined)[]): number | undefined {
  const known = pains.filter((each) => each !== undefined);
  return known.length === 0 ? undefined : Math.max(...known);
}

function worstGrade(...grades: readonly (EffusionGrade | undefined)[]): EffusionGrade | undefined {
  return grades
    .filter((each) => each !== undefined)
    .toSorted((first, second) => effusionRank(first) - effusionRank(second))
    .at(-1);
}
