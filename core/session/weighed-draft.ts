import type { Settings } from "../settings/settings.ts";
import { meanOf } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { PlateShare, WeighedTrial } from "../weight/weighed-trial.ts";
import { trialWeight } from "./choose-weight.ts";
import type { TrialDraft } from "./trial-draft.ts";

/** What a drafted trial says about body weight, and which plates carried it. */
export function weighedDraft(draft: TrialDraft, settings: Settings): WeighedTrial {
  const { file, trial, prepared, cut, weighing, place, limb, excluded, kept, otherFootWeighed } = draft;
  const window = weighing?.window ?? cut?.span;
  const shares = prepared === undefined || window === undefined ? [] : sharesOver(prepared, window, settings);
  const common = {
    file: file.path,
    trial,
    shares,
    excluded: excluded !== undefined,
    kept,
    otherFoot: otherFootWeighed,
  };
  if (prepared === undefined || weighing === undefined) return { ...common, doubtful: false };
  const { newtons, uncertainty } = trialWeight(draft);
  const { rateHz } = prepared.recording;
  const short = weighing.window.end - weighing.window.start < settings.weighingSeconds * rateHz;
  return {
    ...common,
    own: { newtons, uncertainty: Math.hypot(uncertainty, ...prepared.zeroUncertainties) },
    doubtful: place === "after the landing" && (limb !== "both" || short),
  };
}

/** The part of the load on each plate over a stretch; a plate that carries no foot has none. */
function sharesOver(
  { recording, forces }: NonNullable<TrialDraft["prepared"]>,
  { start, end }: SampleSpan,
  settings: Settings,
): readonly PlateShare[] {
  const loaded = recording.plates
    .map(({ name }, index) => ({ plate: name, newtons: meanOf(forces[index]!, start, end) }))
    .filter(({ newtons }) => newtons > settings.otherFootNewtons);
  const total = loaded.reduce((sum, each) => sum + each.newtons, 0);
  return loaded.map(({ plate, newtons }) => ({ plate, share: newtons / total }));
}
