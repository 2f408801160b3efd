import { type Finding, proseFinding } from "../ground/finding.ts";
import { countOf } from "../ground/plain-words.ts";
import { trialKey } from "../ground/trial-key.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { DifferingWeight, SessionWeighing } from "../weight/session-weighing.ts";

/**
 * Says of each trial whose own weight differs from the others', and holds it out of means until a person keeps it
 * (METHODS §2); likewise the trials of a group that cannot be the same person's.
 */
export function holdDiffering<Item extends { readonly result: TrialResult }>(
  analyzed: readonly Item[],
  { differing, question }: SessionWeighing,
  settings: Settings,
): readonly Item[] {
  const differs = new Map(differing.map((each) => [trialKey(each.file, each.trial), each]));
  const strangers = new Set(
    (question?.held ?? []).flatMap(
      (group) => question?.groups[group].trials.map(({ file, trial }) => trialKey(file, trial)) ?? [],
    ),
  );
  return analyzed.map((item) => {
    const { result } = item;
    if (result.status === "refused") return item;
    const key = trialKey(result.file, result.trial);
    const own = differs.get(key);
    const reason = own !== undefined ? differenceWords(own) : strangers.has(key) ? strangerWords : undefined;
    if (reason === undefined) return item;
    // One sentence is enough: where the session disagrees, its other trials are the better witness.
    const others =
      own === undefined ? result.findings : result.findings.filter((each) => each.code !== "weight-differs");
    const findings = own === undefined ? others : [...others, differsFinding(result, own, settings)];
    const isHeld = result.kept !== true && result.excluded === undefined;
    return { ...item, result: { ...result, findings, ...(isHeld ? { held: { reason } } : {}) } };
  });
}

const strangerWords = "the weights of the session are not one person's";

function percentOf(part: number): string {
  const percent = 100 * Math.abs(part);
  return percent.toFixed(percent < 1 ? 2 : 1);
}

function differenceWords({ difference, trials }: DifferingWeight): string {
  const others = trials === 1 ? "the other trial's" : "the other trials'";
  return `its weight is ${percentOf(difference)} % ${difference < 0 ? "below" : "above"} ${others}`;
}

function differsFinding(result: TrialResult, own: DifferingWeight, { gravity }: Settings): Finding {
  const { weight } = result;
  const mass = weight === undefined ? "" : ` weighs the athlete at ${(weight.newtons / gravity).toFixed(1)} kg,`;
  const sure = `${percentOf(own.jointUncertainty)} %`;
  return proseFinding(
    "weight-differs",
    "warning",
    `This trial${mass} ${percentOf(own.difference)} % ${own.difference < 0 ? "below" : "above"} what the session's other standing says (${countOf(own.trials, "trial")}, ± ${sure} with its own): ${result.kept ? "a person keeps it." : "it is held out of means."}`,
    "Look at the standing: a hand on a rail, a foot off the plate, another athlete. Exclude the trial if so; keep it if the weighing is good.",
  );
}
