import { daysBetween } from "../../core/gate/days.ts";
import { nextDayWithinDays } from "../../core/gate/knee-day.ts";
import {
  type EffusionGrade,
  effusionGrades,
  type ReadingMoment,
  readingMoments,
} from "../../core/stated/gate-words.ts";
import type { CautionAddition } from "../../electron/cautions/caution-addition.ts";
import { today } from "../shell/dates.ts";
import { words } from "../words/words.ts";
import { painOf } from "./answers.ts";
import { clockNow, daysAfter } from "./moments.ts";

const prose = words.screens.cautionForms;

type Reading = NonNullable<CautionAddition["readings"]>[number];

/** A reading as its form holds it; "" for what was not read. */
export interface WrittenReading {
  readonly moment: ReadingMoment | "";
  /** The day of a next day's reading; every other one is of the session's day. */
  readonly day: string;
  readonly clock: string;
  readonly pain: string;
  readonly where: "knee" | "other leg" | "elsewhere";
  readonly effusion: string;
  readonly by: string;
}

/** Nothing read yet: of a session that is over the next day's is asked for, of today's nothing is supposed. */
export function noReading(date: string, by: string, now = new Date()): WrittenReading {
  const isToday = date === today(now);
  return {
    moment: isToday ? "" : "nextDay",
    day: daysAfter(date, 1),
    clock: isToday ? clockNow(now) : "",
    pain: "",
    where: "knee",
    effusion: "",
    by,
  };
}

/** What is written, ready to be kept; a sentence where something is missing or cannot be meant. */
export function readingFrom(
  written: WrittenReading,
  date: string,
  now = new Date(),
): { readonly addition: CautionAddition } | { readonly problem: string } {
  const moment = readingMoments.find((each) => each === written.moment);
  if (moment === undefined) return { problem: prose.sayTheMoment };
  const day = moment === "nextDay" ? written.day : date;
  const problem = dayProblem(moment, day, date, now) || clockProblem(written.clock, day, now);
  if (problem !== "") return { problem };
  const pain = painOf(written.pain);
  if (pain === "no number") return { problem: prose.painIsANumber };
  const effusion: EffusionGrade | undefined = effusionGrades.find((grade) => grade === written.effusion);
  if (pain === undefined && effusion === undefined) return { problem: prose.enterPainOrEffusion };
  const by = written.by.trim();
  if (by === "") return { problem: prose.sayWhoRead };
  const read = { moment, meant: written.clock === "" ? day : `${day}T${written.clock}`, by };
  const readings: readonly Reading[] =
    pain !== undefined && effusion !== undefined && written.where !== "knee"
      ? [
          { ...read, pain, where: written.where },
          { ...read, effusion },
        ]
      : [
          {
            ...read,
            ...(pain !== undefined && { pain, where: written.where }),
            ...(effusion !== undefined && { effusion }),
          },
        ];
  return { addition: { readings: [...readings] } };
}

function dayProblem(moment: ReadingMoment, day: string, date: string, now: Date): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day)) return prose.enterTheDay;
  if (day > today(now)) return prose.dayNotCome;
  const days = daysBetween(date, day);
  return moment === "nextDay" && (days < 1 || days > nextDayWithinDays) ? prose.nextDayRange(nextDayWithinDays) : "";
}

function clockProblem(clock: string, day: string, now: Date): string {
  if (clock !== "" && !/^\d{2}:\d{2}$/.test(clock)) return prose.timeOfDayWritten;
  return day === today(now) && clock > clockNow(now) ? prose.timeNotCome : "";
}
