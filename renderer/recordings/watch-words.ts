import type { WatchedTrial, WatchView } from "../../electron/boundary/watch-view.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";

/** "Single-leg drop jump, right", "Countermovement jump"; what is unknown is said to be. */
export function watchedName({ test, limb, plate }: Pick<WatchedTrial, "test" | "limb" | "plate">): string {
  const one = plate === undefined ? limb : words.limbs.plate(plate);
  if (test === undefined) return limb === undefined || limb === "both" ? "Test not stated" : `Test not stated, ${one}`;
  const label = words.tests.label(test);
  if (limb === undefined) return `${sentenceCase(label)}, limb not stated`;
  return limb === "both" ? sentenceCase(label) : `Single-leg ${label}, ${one}`;
}

/** What is shown large: counts, does not count, was practice, or waits for an answer. */
export function verdictWord(
  trial: WatchedTrial,
): "Counts" | "Counts, look at it" | "Practice" | "Does not count" | "Asks" {
  if (trial.counts) return trial.reason === "" ? "Counts" : "Counts, look at it";
  if (trial.waits || trial.test === undefined || trial.limb === undefined) return "Asks";
  return trial.practice ? "Practice" : "Does not count";
}

/** How the watched folder stands, in a sentence. */
export function watchSentence({ state, folder, writing, taken }: WatchView): string {
  if (state === "unreachable") {
    return `The folder ${folder} cannot be reached. What was taken in is kept; watching goes on when it is back.`;
  }
  if (writing.length > 0) return `Being written: ${writing.join(", ")}.`;
  return taken === 0 ? `Watching ${folder}. Nothing was recorded yet.` : `Watching ${folder}. ${taken} taken in.`;
}
