import type { ReadRecording, SessionAnalysis, SessionInput } from "./analysis.ts";
import { analyzeTrial } from "./analyze-trial.ts";
import { weighSession } from "./choose-weight.ts";
import { evaluateCriteria } from "./criteria/evaluate-criteria.ts";
import { gateOf } from "./criteria/gate.ts";
import { returnToPivotingSport } from "./criteria/return-to-pivoting-sport.ts";
import { draftTrials } from "./draft-trials.ts";
import { proveTrialPlates } from "./prove-trial-plates.ts";
import { readSessionRecording } from "./read-session-recording.ts";
import { withoutRepeats } from "./repeated-recordings.ts";
import { unusedEntries } from "./session-entries.ts";
import { type Settings, settingsWith } from "./settings.ts";
import { compareSides } from "./sides/compare-sides.ts";
import { dropHeightFindings } from "./sides/drop-height-legs.ts";
import { unreadableTrial } from "./unreadable-trial.ts";

/**
 * The whole path for one session, from the bytes of its files to criteria. Window, command line and tests all call
 * this, so that a number is made in one way only. Same input, same settings: same result, bit for bit.
 *
 * Never throws on bad input: a file that cannot be analysed becomes a refused trial with findings.
 */
export function analyzeSession(input: SessionInput, settings: Settings): SessionAnalysis {
  const { description, stated } = input;
  const own = settingsWith({ ...settings, gravity: stated.gravity ?? description.gravity ?? settings.gravity });

  // Bytes become recordings, recordings are cut into trials and weighed.
  const { files, repeated } = withoutRepeats(input.files);
  const recordings = files.map((file) => readSessionRecording(file, input, own));
  const drafts = recordings.flatMap((read) => draftTrials(read, input, own));

  // One weight for the session, from every trial nobody excluded.
  const weight = weighSession(drafts, own);

  // Trials get events, events give measures.
  const analyzed = drafts.map((draft) => analyzeTrial(draft, weight, stated.massKg ?? description.massKg, own));

  // Single-leg trials prove which foot stood on which plate.
  const proved = proveTrialPlates(analyzed, drafts, description, own);
  const trials = [...proved.trials, ...input.unreadable.map(unreadableTrial), ...repeated].sort(byFileAndNumber);

  // Measures of two sides give comparisons; comparisons meet criteria, where the gate is open.
  const involved = stated.involved ?? description.involved;
  const gate = gateOf(description, own, input.descriptionFindings);
  const comparisons = involved === undefined ? [] : compareSides({ involved, trials: proved.comparable }, own);
  const references = description.references ?? [];
  const criteria =
    involved === undefined
      ? []
      : evaluateCriteria(
          returnToPivotingSport,
          { comparisons, involved, references, gate, trials: proved.comparable },
          own,
        );

  return {
    result: {
      folder: input.folder,
      description: involved === undefined ? description : { ...description, involved },
      gravity: own.gravity,
      trials,
      comparisons,
      criteriaSet: returnToPivotingSport,
      criteria,
      gate,
      findings: [
        ...input.descriptionFindings,
        ...unusedEntries(description, trials),
        ...proved.findings,
        ...dropHeightFindings(proved.comparable, own),
      ],
    },
    recordings: new Map(recordings.map((read): [string, ReadRecording] => [read.file.path, read])),
    jumps: new Map(analyzed.flatMap(({ key, jump }) => (jump === undefined ? [] : [[key, jump] as const]))),
  };
}

function byFileAndNumber(
  a: { readonly file: string; readonly trial: number },
  b: { readonly file: string; readonly trial: number },
): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.trial - b.trial;
}
