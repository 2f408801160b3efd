import type { Gate } from "../gate/gate.ts";
import { effusionRank } from "../gate/limits.ts";
import type { InvolvedSide } from "../ground/limb.ts";
import { listInWords } from "../ground/plain-words.ts";

/** One of the knee's own rows: what was read or answered of it, held against the clinic's limit. */
export interface KneeRow {
  /** Stable public identifier. */
  readonly id: "pain-of-the-day" | "pain-next-day" | "effusion-of-the-day" | "giving-way";
  readonly label: string;
  /** In a few words with what was seen: "pain 1 of 10". */
  readonly short: string;
  /** What is asked for, in words: "at most 2 of 10". */
  readonly threshold: string;
  readonly status: "met" | "not-met" | "not-measured";
  /** One plain sentence. */
  readonly reason: string;
}

/**
 * The knee's own rows; common practice, with the clinic's limits. No gate withholds them: a knee that hurts or swells is *not met*, not silent. The day after has
 * rows of its own, which change nothing about the day of the jumps. Nobody injured: none.
 */
export function kneeRows({ day, answered, limits }: Gate, involved: InvolvedSide | undefined): readonly KneeRow[] {
  if (involved === undefined || involved === "none") return [];
  const rows: readonly (Omit<KneeRow, "status" | "reason"> & {
    readonly met: boolean | undefined;
    readonly seen: string;
  })[] = [
    {
      id: "pain-of-the-day",
      label: "Pain of the knee, worst read on the day",
      short: day.knee === undefined ? "pain" : `pain ${day.knee} of 10`,
      threshold: `at most ${limits.painSingleLegAndDrop} of 10`,
      met: day.knee === undefined ? undefined : day.knee <= limits.painSingleLegAndDrop,
      seen: `Read ${momentsOf(day, ({ pain }) => pain !== undefined)}; the worst is ${day.knee} of 10.`,
    },
    {
      id: "pain-next-day",
      label: "Pain of the knee the next day",
      short: day.nextDayPain === undefined ? "pain the next day" : `pain the next day ${day.nextDayPain} of 10`,
      threshold: "no higher than on the day",
      met: day.nextDayPain === undefined || day.knee === undefined ? undefined : day.nextDayPain <= day.knee,
      seen: `The next day's reading is ${day.nextDayPain} of 10, the day's worst ${day.knee} of 10.`,
    },
    {
      id: "effusion-of-the-day",
      label: "Effusion of the knee, worst read on the day",
      short: day.effusion === undefined ? "effusion" : `effusion ${day.effusion}`,
      threshold: `at most ${limits.effusion}`,
      met: day.effusion === undefined ? undefined : effusionRank(day.effusion) <= effusionRank(limits.effusion),
      seen: `Read ${momentsOf(day, ({ effusion }) => effusion !== undefined)}; the worst is ${day.effusion}.`,
    },
    {
      id: "giving-way",
      label: "Giving way since the last visit",
      short: givingWayWords(givingWay(answered)),
      threshold: "none",
      met: givingWay(answered),
      seen: givingWay(answered) === true ? "Answered: it has not given way." : "Answered: the knee has given way.",
    },
  ];
  return rows.map(({ met, seen, ...row }) => ({
    ...row,
    status: met === undefined ? "not-measured" : met ? "met" : "not-met",
    reason: met === undefined ? "Not entered for this session." : seen,
  }));
}

/** At which moments of the day something was read: "before and during". */
function momentsOf({ readings }: Gate["day"], isRead: (reading: Gate["day"]["readings"][number]) => boolean): string {
  const read = (["before", "during", "after"] as const).filter((moment) =>
    readings.some((each) => each.moment === moment && isRead(each)),
  );
  return listInWords(read);
}

function givingWayWords(none: boolean | undefined): string {
  if (none === undefined) return "giving way";
  return none ? "no giving way" : "it has given way";
}

/** True where every answer of the day says no; undefined where nobody answered. */
function givingWay({ given, against }: Gate["answered"]): boolean | undefined {
  if (against.some(({ name }) => name === "givingWay")) return false;
  return given.some(({ answers }) => answers.givingWay === "no") ? true : undefined;
}
