import type { RecordingFile } from "../recording/file.ts";
import type { ReadRecording } from "../recording/recording-as-read.ts";
import { type Settings, settingsWith } from "../settings/settings.ts";
import type { TrialWeightContext } from "../weight/session-weighing.ts";
import type { WeighedTrial } from "../weight/weighed-trial.ts";
import { type AnalyzedTrial, analyzeTrial } from "./analyze-trial.ts";
import { draftTrials } from "./draft-trials.ts";
import { type PlateEvidence, plateEvidence } from "./prove-trial-plates.ts";
import { readSessionRecording } from "./read-session-recording.ts";
import type { HashedFile } from "./repeated-recordings.ts";
import type { SessionStatements } from "./session-input.ts";
import type { TrialDraft } from "./trial-draft.ts";
import { weighedDraft } from "./weighed-draft.ts";

/** One file as read, with its trials cut, assigned and weighed. */
export interface DraftedFile extends HashedFile {
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
  return draftRead(readSessionRecording(file, session, settings), session, settings);
}

/** A recording is cut into trials, and they are weighed. */
export function draftRead(read: ReadRecording, session: SessionStatements, settings: Settings): DraftedFile {
  const { path, sha256 } = read.file;
  const drafts = draftTrials(read, session, settings);
  return { path, sha256, read, drafts, weighed: drafts.map((draft) => weighedDraft(draft, settings)) };
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
