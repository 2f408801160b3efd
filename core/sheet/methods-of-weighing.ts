import { countOf } from "../ground/plain-words.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import { type MethodReference, methodReferences } from "./method-references.ts";

/** Names a publication in a sentence, and remembers it for the list behind the paragraph. */
export type Cite = (reference: MethodReference) => string;

/** How the trials were weighed: one sentence for each source of weight that was used, and none for any other. */
export function weighingSentences(
  trials: readonly TrialResult[],
  session: SessionResult,
  settings: Settings,
  cite: Cite,
): readonly string[] {
  const weighed = trials.filter((trial) => trial.weight !== undefined);
  const from = (source: NonNullable<TrialResult["weight"]>["from"]): readonly TrialResult[] =>
    weighed.filter((trial) => trial.weight?.from === source);
  const before = from("quiet standing before the jump");
  const after = from("quiet standing after the landing");
  const short = [...before, ...after].flatMap((trial) => {
    const seconds = windowSeconds(trial);
    return seconds !== undefined && seconds < settings.weighingSeconds - 1 / (trial.rate ?? 1) ? [seconds] : [];
  });
  const { massKg } = session.description;
  const gravity = session.gravity ?? session.description.gravity ?? settings.gravity;
  const saidOf = (those: readonly TrialResult[], sentence: (count: string) => string): string =>
    those.length === 0 ? "" : sentence(countOf(those.length, "trial"));
  return [
    saidOf(
      before,
      () =>
        `Body weight is the mean force over ${settings.weighingSeconds} s of quiet standing before the jump (${cite(methodReferences.owen)}).`,
    ),
    saidOf(
      after,
      (count) =>
        `In ${count} body weight is the mean force over ${settings.weighingSeconds} s of quiet standing after the landing.`,
    ),
    saidOf(
      [...before, ...after, ...from("quiet standing before and after the jump")],
      () =>
        `Among the seconds around the steadiest whose force has at most ${settings.weighingAlike} times its standard deviation, the one was taken whose momentum strays least from a straight line.`,
    ),
    short.length === 0
      ? ""
      : `In ${countOf(short.length, "trial")} quiet standing was shorter (${Math.min(...short).toFixed(2)} s at the least) and was used with its larger uncertainty.`,
    saidOf(
      from("quiet standing before and after the jump"),
      (count) =>
        `In ${count} with quiet standing before and after the jump, body weight is the change of the mean impulse between the two windows over the time between them, where that is the surer estimate.`,
    ),
    saidOf(
      from("other trials on the same plates"),
      (count) =>
        `In ${count} without usable standing the weight of the session's other trials on the same plates was used, with the scatter between trials in its uncertainty.`,
    ),
    saidOf(
      from("other trials on other plates"),
      (count) =>
        `In ${count} without usable standing the weight of the session's trials on other plates was used, with the scatter between trials and the plates' relative gain in its uncertainty.`,
    ),
    saidOf(
      from("entered mass"),
      (count) => `In ${count} weight follows from the entered mass${massKg === undefined ? "" : ` of ${massKg} kg`}.`,
    ),
    weighed.length === 0 ? "" : `Gravity is ${gravity} m/s².`,
  ];
}

function windowSeconds({ weight, rate }: TrialResult): number | undefined {
  return weight?.window === undefined || rate === undefined
    ? undefined
    : (weight.window.end - weight.window.start) / rate;
}
