import type { RecordingFile } from "../recording/file.ts";
import type { ReadRecording } from "../recording/recording-as-read.ts";
import { type Settings, settingsWith } from "../settings/settings.ts";
import type { TrialWeightContext } from "../weight/session-weighing.ts";
import type { WeighedTrial } from "../weight/weighed-trial.ts";
import { type AnalyzedTrial, analyzeTrial } from "./analyze-trial.ts";
import { draftTrials } from "./draft-trials.ts";
import { type PlateEvidence, plateEvidence } from "./prove-trial-plates.ts";
import { readSessionRecording } from "./read-session-recording.ts";
import type { SessionStatements } from "./session-input.ts";
import type { TrialDraft } from "./trial-draft.ts";
import { weighedDraft } from "./weighed-draft.ts";

/** One file as read, with its trials cut, assigned and weighed. */
export interface DraftedFile {
  readonly read: ReadRecording;
  readonly drafts: readonly TrialDraft[];
  /** What each draft says about body weight. */
  readonly weighed: readonly WeighedTrial[];
}

/** One analysed trial with what its recording says about the plates. */
export type FileTrial = AnalyzedTrial & { readonly evidence: PlateEvidence };

/** The settings a session is analysed with: its gravity outranks theirs. */
export function sessionSettings({ stated, description }: SessionStatements, settings: Settings): Settings {
  return settingsWith({ ...settings, gravity: stated.gravity ?? description.gravity ?? settings.gravity });
}

/** Bytes become a recording, the recording is cut into trials and weighed. */
export function draftFile(file: RecordingFile, session: SessionStatements, settings: Settings): DraftedFile {
  const read = readSessionRecording(file, session, settings);
  const drafts = draftTrials(read, session, settings);
  return { read, drafts, weighed: drafts.map((draft) => weighedDraft(draft, settings)) };
}

/** Weight in newtons by the body mass that was stated or entered; undefined without one. */
export function enteredNewtons({ stated, description }: SessionStatements, settings: Settings): number | undefined {
  const massKg = stated.massKg ?? description.massKg;
  return massKg === undefined ? undefined : massKg * settings.gravity;
}

/** The trials of one file from their drafts to their measures, with what the whole session says about weight. */
export function analyzeDrafts(
  { drafts }: Pick<DraftedFile, "drafts">,
  weight: TrialWeightContext,
  { stated, description }: SessionStatements,
  settings: Settings,
): readonly FileTrial[] {
  const massKg = stated.massKg ?? description.massKg;
  return drafts.map((draft) => ({
    ...analyzeTrial(draft, weight, massKg, settings),
    evidence: plateEvidence(draft, settings),
  }));
}

/** The two steps of an analysis that concern one file alone. */
export interface FileSteps {
  readonly draftFile: typeof draftFile;
  readonly analyzeDrafts: (
    drafted: DraftedFile,
    weight: TrialWeightContext,
    session: SessionStatements,
    settings: Settings,
  ) => readonly FileTrial[];
}

export const fileSteps: FileSteps = { draftFile, analyzeDrafts };
