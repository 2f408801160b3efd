import type { KneeDay } from "./knee-day.ts";
import { effusionRank } from "./limits.ts";

/**
 * What of a knee's response a day later has to be asked about before the next session: pain or effusion that rose above
 * the day's worst, or that nobody entered. Parts of a sentence; empty where it was entered and rose nowhere.
 */
export function nextDayConcerns({ knee, effusion, nextDayPain, nextDayEffusion }: KneeDay): readonly string[] {
  const from = (before: string | undefined) => (before === undefined ? "" : `from ${before} `);
  return [
    ...(nextDayPain === undefined
      ? ["pain was not entered"]
      : nextDayPain > (knee ?? 0)
        ? [`pain rose ${from(knee?.toString())}to ${nextDayPain} of 10`]
        : []),
    ...(nextDayEffusion === undefined
      ? ["effusion was not entered"]
      : effusionRank(nextDayEffusion) > effusionRank(effusion ?? "none")
        ? [`effusion rose ${from(effusion)}to ${nextDayEffusion}`]
        : []),
  ];
}
