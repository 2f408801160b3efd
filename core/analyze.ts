import { settled, type Walk, walkLater, walkNow } from "./ground/settled-later.ts";
import type { ReadRecording } from "./recording/recording-as-read.ts";
import type { SessionResult } from "./result/session-result.ts";
import { concludeSession } from "./session/conclude-session.ts";
import { type FileMapper, type FileSteps, fileSteps, mapperInPlace, type WeighedFile } from "./session/file-mapper.ts";
import { enteredNewtons, sessionSettings } from "./session/file-trials.ts";
import type { WitnessedTrial } from "./session/prove-trial-plates.ts";
import { withoutRepeats } from "./session/repeated-recordings.ts";
import type { SessionAnalysis } from "./session/session-analysis.ts";
import type { SessionInput, SessionStatements } from "./session/session-input.ts";
import type { Settings } from "./settings/settings.ts";
import { weighSession } from "./weight/session-weighing.ts";

/** A session's result with what it was made from, as its mapper left it. */
interface Concluded<File, Trial> {
  readonly result: SessionResult;
  readonly files: readonly File[];
  readonly analyzed: readonly Trial[];
}

/**
 * The whole path for one session, from the bytes of its files to criteria, wherever its files are computed. Window,
 * command line and tests all take these steps, so that a number is made in one way only. Same input, same settings:
 * same result, bit for bit.
 */
function* analysis<File extends WeighedFile, Trial extends WitnessedTrial>(
  session: SessionStatements,
  settings: Settings,
  mapper: FileMapper<File, Trial>,
): Walk<Concluded<File, Trial>> {
  const ofSession = sessionSettings(session, settings);

  // Bytes become recordings, recordings are cut into trials and weighed; each recording counts once.
  const { files: all, unreadable } = yield* settled(mapper.weighFiles(session, ofSession));
  const { files, repeated } = withoutRepeats(all);

  // Weights are held against each other, and weigh the trials that cannot be weighed themselves.
  const weighed = files.flatMap((file) => file.weighed);
  const weighing = weighSession(weighed, enteredNewtons(session, ofSession), ofSession);

  // Trials get events, events give measures.
  const analyzed = yield* settled(mapper.analyzeFiles(files, weighing, session, ofSession));

  // Plates are proved, sides compared, criteria evaluated.
  const result = concludeSession(session, { analyzed, weighing, unreadable, repeated }, ofSession);
  return { result, files, analyzed };
}

/**
 * Analyses a session of files in memory, with the recordings and motions behind its result.
 *
 * Never throws on bad input: a file that cannot be analysed becomes a refused trial with findings.
 * @param steps the two steps that concern one file alone; whoever analyses a session again and again may keep their
 *   outcomes and give steps that answer the same
 */
export function analyzeSession(input: SessionInput, settings: Settings, steps: FileSteps = fileSteps): SessionAnalysis {
  const { result, files, analyzed } = walkNow(analysis(input, settings, mapperInPlace(input, steps)));
  return {
    result,
    recordings: new Map(files.map(({ read }): [string, ReadRecording] => [read.file.path, read])),
    trials: new Map(analyzed.map((trial) => [trial.key, trial])),
  };
}

/** Analyses a session whose files are computed elsewhere; the result is that of `analyzeSession` over the same files. */
export async function analyzeElsewhere<File extends WeighedFile>(
  session: SessionStatements,
  settings: Settings,
  mapper: FileMapper<File>,
): Promise<SessionResult> {
  const { result } = await walkLater(analysis(session, settings, mapper));
  return result;
}
