import { type Finding, finding } from "../ground/finding.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { SessionDescription } from "../stated/session.ts";

/** Body mass of the athlete's last session before this one. */
export interface EarlierMass {
  /** ISO date. */
  readonly date: string;
  readonly massKg: number;
  readonly from: "entered" | "weighed";
}

/** No setting: a conversion of units. */
const dayMilliseconds = 86_400_000;

/** Asks about a body mass that is far from the last session's although little time has passed (METHODS §2). */
export function massSinceLast(
  { date, massKg }: Pick<SessionDescription, "date" | "massKg">,
  earlier: EarlierMass | undefined,
  trials: readonly TrialResult[],
  settings: Settings,
): readonly Finding[] {
  const now = weighedMass(trials) ?? massKg;
  if (earlier === undefined || date === undefined || now === undefined) return [];
  const days = Math.round((Date.parse(date) - Date.parse(earlier.date)) / dayMilliseconds);
  if (!(days >= 0 && days < settings.massChangeDays)) return [];
  const change = now / earlier.massKg - 1;
  if (!(Math.abs(change) > settings.massChangeFraction)) return [];
  return [
    finding("mass-changed", "warning", {
      massKg: now,
      earlierKg: earlier.massKg,
      earlierFrom: earlier.from,
      earlierDate: earlier.date,
      days,
    }),
  ];
}

/** Median of what the trials that count weigh. */
function weighedMass(trials: readonly TrialResult[]): number | undefined {
  const masses = trials
    .filter(countsInMeans)
    .flatMap(({ measures }) => measures.filter(({ id }) => id === "bodyMass").map(({ value }) => value))
    .sort((a, b) => a - b);
  const half = masses.length >> 1;
  return masses.length % 2 === 1
    ? masses[half]
    : masses.length === 0
      ? undefined
      : (masses[half - 1]! + masses[half]!) / 2;
}
