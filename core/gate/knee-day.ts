import { type EffusionGrade, effusionGrades, type ReadingMoment } from "../stated/gate-words.ts";
import type { SessionDescription } from "../stated/session.ts";
import { dayOf, daysBetween } from "./days.ts";

/** A reading as the day counts it; older records know neither its time nor who read it. */
export interface CountedReading {
  readonly moment: ReadingMoment;
  readonly meant?: string;
  readonly written?: string;
  readonly by?: string;
  readonly pain?: number;
  readonly where?: "knee" | "other leg" | "elsewhere";
  readonly effusion?: EffusionGrade;
}

/** The readings of a session's day, and what they come to. */
export interface KneeDay {
  /** Of the day itself and the day after, in the order in which they were written. */
  readonly readings: readonly CountedReading[];
  /** Whether pain of the knee, and effusion, were read on the day itself. */
  readonly painRead: boolean;
  readonly effusionRead: boolean;
  /** The worst pain of before, during and after; absent where nobody read it there. */
  readonly knee?: number;
  readonly otherLeg?: number;
  readonly elsewhere?: number;
  /** The worst effusion of before, during and after. */
  readonly effusion?: EffusionGrade;
  /** The knee a day later; they say nothing about the day's jumps. */
  readonly nextDayPain?: number;
  readonly nextDayEffusion?: EffusionGrade;
}

/**
 * A response that comes later than this is no longer the next day's. No setting: it says what "the next day" means in
 * readings that are already stored.
 */
export const nextDayWithinDays = 3;

/**
 * The readings of a session, and the worst of it. One about another day answers nothing, but what it says against
 * jumping stays: a date that is corrected afterwards makes no knee better.
 */
export function kneeDay(description: SessionDescription): KneeDay {
  const { date, pain, effusion } = description;
  const stated: readonly CountedReading[] =
    pain === undefined && effusion === undefined
      ? []
      : [
          {
            moment: "during",
            ...(pain === undefined ? {} : { pain }),
            ...(effusion === undefined ? {} : { effusion }),
          },
        ];
  const kept = (description.readings ?? []).filter((each) => each.moment !== "nextDay" || countsForDay(each, date));
  const readings = [...stated, ...kept];
  const ofDay = [...stated, ...kept.filter((each) => countsForDay(each, date))].filter(isOfTheDay);
  const today = readings.filter(isOfTheDay);
  const later = readings.filter(({ moment }) => moment === "nextDay");
  const at = (where: NonNullable<CountedReading["where"]>) =>
    worstPain(today.filter((each) => (each.where ?? "knee") === where));
  return withoutAbsent({
    readings,
    painRead: ofDay.some(({ pain: read, where = "knee" }) => read !== undefined && where === "knee"),
    effusionRead: ofDay.some(({ effusion: read }) => read !== undefined),
    knee: at("knee"),
    otherLeg: at("other leg"),
    elsewhere: at("elsewhere"),
    effusion: worstEffusion(today),
    nextDayPain: worstPain(later.filter((each) => (each.where ?? "knee") === "knee")),
    nextDayEffusion: worstEffusion(later),
  });
}

function isOfTheDay({ moment }: CountedReading): boolean {
  return moment !== "nextDay";
}

/** True where a time lies on the session's day; of a session without a date nothing can be said to. */
export function isOnDay(meant: string, date: string | undefined): boolean {
  return date !== undefined && dayOf(meant) === dayOf(date);
}

/** True where a reading belongs to a session's day, or to the day after it. */
export function countsForDay({ moment, meant }: CountedReading, date: string | undefined): boolean {
  if (date === undefined || meant === undefined) return false;
  const days = daysBetween(dayOf(date), dayOf(meant));
  return moment === "nextDay" ? days >= 1 && days <= nextDayWithinDays : days === 0;
}

function worstPain(readings: readonly CountedReading[]): number | undefined {
  return readings.reduce<number | undefined>(
    (worst, { pain }) => (pain === undefined || (worst !== undefined && worst >= pain) ? worst : pain),
    undefined,
  );
}

function worstEffusion(readings: readonly CountedReading[]): EffusionGrade | undefined {
  return effusionGrades.findLast((grade) => readings.some(({ effusion }) => effusion === grade));
}

type Absent<Each> = { readonly [Key in keyof Each]: Each[Key] | undefined };

function withoutAbsent(day: Absent<Required<KneeDay>>): KneeDay {
  return Object.fromEntries(Object.entries(day).filter(([, value]) => value !== undefined)) as unknown as KneeDay;
}
