import type { Limb } from "../../core/ground/limb.ts";
import type { WatchedTrial, WatchView } from "../../electron/boundary/watch-view.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.watch;

/** "Single-leg drop jump, right", "Countermovement jump"; what is unknown is said to be. */
export function watchedName({ test, limb, plate }: Pick<WatchedTrial, "test" | "limb" | "plate">): string {
  const one = (leg: Limb) => (plate === undefined ? leg : words.limbs.plate(plate));
  if (test === undefined)
    return limb === undefined || limb === "both" ? prose.testNotStated : prose.testNotStatedOf(one(limb));
  const label = words.tests.label(test);
  if (limb === undefined) return prose.limbNotStatedOf(sentenceCase(label));
  return limb === "both" ? sentenceCase(label) : prose.singleLegOf(label, one(limb));
}

export type Verdict = "counts" | "counts, look" | "practice" | "does not" | "asks";

/** What is shown large: counts, does not count, was practice, or waits for an answer. */
export function verdictOf(trial: WatchedTrial): Verdict {
  if (trial.counts) return trial.reason === "" ? "counts" : "counts, look";
  if (trial.waits || trial.test === undefined || trial.limb === undefined) return "asks";
  return trial.practice ? "practice" : "does not";
}

export const verdictWords: Readonly<Record<Verdict, string>> = {
  counts: prose.counts,
  "counts, look": prose.countsLook,
  practice: prose.practice,
  "does not": prose.doesNotCount,
  asks: prose.asks,
};

/** How the watched folder stands, in a sentence. */
export function watchSentence({ state, folder, writing, taken }: WatchView): string {
  if (state === "unreachable") {
    return prose.folderNotReached(folder);
  }
  if (writing.length > 0) return prose.beingWritten(writing.join(", "));
  return taken === 0 ? prose.watchingNothing(folder) : prose.watchingTakenIn(folder, taken);
}
