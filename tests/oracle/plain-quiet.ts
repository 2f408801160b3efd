import type { Settings } from "../../core/settings/settings.ts";
import { type PlainRun, standingLoad } from "./plain-contacts.ts";
import { meanOf, type PlainForce } from "./plain-curve.ts";

/**
 * Stretches of loaded quiet standing among the samples `first` to `last`. METHODS §1 names them and leaves their rule
 * open: here a sample is quiet while the mean of the 50 ms around it is within 4 % of the standing load (the settings'
 * numbers), and a stretch stays 30 ms away from where that ends, because the mean notices a movement late.
 */
export function quietRuns(force: PlainForce, first: number, last: number, settings: Settings): PlainRun[] {
  const { samples, rateHz } = force;
  const load = standingLoad(force, settings);
  const half = Math.floor(Math.max(2, Math.round(settings.quietBlockSeconds * rateHz)) / 2);
  const back = Math.round(settings.onsetBackSeconds * rateHz);
  const isQuiet = (index: number): boolean => {
    const around = samples.slice(Math.max(0, index - half), index + half + 1);
    return Math.abs(meanOf(around) - load) <= settings.quietBandFraction * load;
  };
  const runs: PlainRun[] = [];
  let start = -1;
  for (let index = first; index <= last + 1; index++) {
    const quiet = index <= last && isQuiet(index);
    if (quiet && start < 0) start = index;
    if (quiet || start < 0) continue;
    const from = start === 0 ? 0 : start + back;
    const to = index === samples.length ? index - 1 : index - 1 - back;
    if (to > from) runs.push({ first: from, last: to });
    start = -1;
  }
  return runs;
}
