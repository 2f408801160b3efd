import type { SettledLater } from "../ground/settled-later.ts";
import type { Settings } from "../settings/settings.ts";
import type { TrialWeightContext } from "../weight/session-weighing.ts";
import type { WeighedTrial } from "../weight/weighed-trial.ts";
import { analyzeDrafts, type DraftedFile, draftFile, type FileTrial } from "./file-trials.ts";
import type { WitnessedTrial } from "./prove-trial-plates.ts";
import type { HashedFile } from "./repeated-recordings.ts";
import type { SessionInput, SessionStatements, UnreadableFile } from "./session-input.ts";

/** A file after it was cut and weighed, with whatever its mapper needs to find it again. */
export interface WeighedFile extends HashedFile {
  /** What each of its trials says about body weight. */
  readonly weighed: readonly WeighedTrial[];
}

/** The files of a session that could be opened, weighed, and those that could not. */
export interface WeighedFiles<File extends WeighedFile> {
  readonly files: readonly File[];
  readonly unreadable: readonly UnreadableFile[];
}

/**
 * Says where the files of a session are computed: in place, kept between two statements, or on other threads. Each file
 * is passed twice, because the weight of a trial may come from the files around it.
 */
export interface FileMapper<File extends WeighedFile = WeighedFile, Trial extends WitnessedTrial = WitnessedTrial> {
  /** Every file of the session is read, cut into trials and weighed. */
  readonly weighFiles: (session: SessionStatements, settings: Settings) => SettledLater<WeighedFiles<File>>;
  /** The trials of these files, in the order of the files, with what the whole session says about weight. */
  readonly analyzeFiles: (
    files: readonly File[],
    weight: TrialWeightContext,
    session: SessionStatements,
    settings: Settings,
  ) => SettledLater<readonly Trial[]>;
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

/** Nothing is kept: each step is taken anew. */
export const fileSteps: FileSteps = { draftFile, analyzeDrafts };

/** Computes each file where it is asked for, one after the other. */
export function mapperInPlace(
  { files, unreadable }: Pick<SessionInput, "files" | "unreadable">,
  steps: FileSteps,
): FileMapper<DraftedFile, FileTrial> {
  return {
    weighFiles: (session, settings) => ({
      files: files.map((file) => steps.draftFile(file, session, settings)),
      unreadable,
    }),
    analyzeFiles: (drafted, weight, session, settings) =>
      drafted.flatMap((file) => steps.analyzeDrafts(file, weight, session, settings)),
  };
}
