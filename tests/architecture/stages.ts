import { readFileSync } from "node:fs";
import { join } from "node:path";
import { importsIn, projectRoot } from "./imports.ts";

/** A stage that somebody imports. */
export interface StageUse {
  readonly file: string;
  readonly line: number;
  readonly stage: string;
}

/** Stages of the analysis of one session by where they are made. */
const stages: Readonly<Record<string, readonly string[]>> = {
  "core/session/repeated-recordings.ts": ["withoutRepeats"],
  "core/session/read-session-recording.ts": ["readSessionRecording"],
  "core/session/draft-trials.ts": ["draftTrials"],
  "core/session/weighed-draft.ts": ["weighedDraft"],
  "core/weight/session-weighing.ts": ["weighSession"],
  "core/session/choose-weight.ts": ["chooseWeight"],
  "core/session/analyze-trial.ts": ["analyzeTrial"],
  "core/session/measure-trial.ts": ["measureTrial"],
  "core/session/hold-differing.ts": ["holdDiffering"],
  "core/session/prove-trial-plates.ts": ["proveTrialPlates", "plateEvidence"],
  "core/session/conclude-session.ts": ["concludeSession"],
  "core/sides/compare-sides.ts": ["compareSides"],
  "core/criteria/evaluate-criteria.ts": ["evaluateCriteria"],
};

/** The two steps of a file, which a mapper takes where it computes. */
const fileSteps: Readonly<Record<string, readonly string[]>> = {
  "core/session/file-trials.ts": ["draftFile", "draftRead", "analyzeDrafts"],
};

/** Each file of stages with what it exports as such. */
export const guardedStages = Object.entries({ ...stages, ...fileSteps });

const recipe = "core/analyze.ts";
const recipeRoom = "core/session/";

/** Who takes the steps of a file: threads, what is kept between statements, and a mass weighed of an earlier session. */
const mappers = [
  "electron/jobs/session-work.ts",
  "electron/workspace/kept-steps.ts",
  "electron/register-host/earlier-mass.ts",
];

/** Imports of stages by files that are not the recipe, given what a file is called and says. */
export function stagesTakenIn(file: string, text = readFileSync(join(projectRoot, file), "utf8")): readonly StageUse[] {
  if (file === recipe || file.startsWith(recipeRoom)) return [];
  const guarded = mappers.includes(file) ? stages : { ...stages, ...fileSteps };
  const lines = text.split("\n");
  return importsIn(file, text).flatMap(({ line, target, typeOnly }) => {
    if (typeOnly) return [];
    const from = lines.slice(line - 1).join("\n");
    const taken = from.slice(0, from.indexOf(";"));
    // The names between the braces; a whole module under one name has every stage of it.
    const names = /\{([^}]*)\}/.exec(taken)?.[1]?.split(",");
    const plain = names?.map((name) => name.trim().replace(/ as .*$/, ""));
    return (guarded[target] ?? [])
      .filter((stage) => plain === undefined || plain.includes(stage))
      .map((stage) => ({ file, line, stage }));
  });
}
