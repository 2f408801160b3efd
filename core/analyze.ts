import type { ReadRecording } from "./recording/recording-as-read.ts";
import { concludeSession } from "./session/conclude-session.ts";
import { enteredNewtons, type FileSteps, fileSteps, sessionSettings } from "./session/file-trials.ts";
import { withoutRepeats } from "./session/repeated-recordings.ts";
import type { SessionAnalysis } from "./session/session-analysis.ts";
import type { SessionInput } from "./session/session-input.ts";
import type { Settings } from "./settings/settings.ts";
import { weighSession } from "./weight/session-weighing.ts";

/**
 * The whole path for one session, from the bytes of its files to criteria. Window, command line and tests all take
 * these steps, so that a number is made in one way only. Same input, same settings: same result, bit for bit.
 *
 * Never throws on bad input: a file that cannot be analysed becomes a refused trial with findings.
 * @param steps the two steps that concern one file alone; whoever analyses a session again and again may keep their
 *   outcomes and give steps that answer the same
 */
export function analyzeSession(
  input: SessionInput,
  settings: Settings,
  { draftFile, analyzeDrafts }: FileSteps = fileSteps,
): SessionAnalysis {
  const own = sessionSettings(input, settings);

  // Bytes become recordings, recordings are cut into trials and weighed; each recording counts once.
  const { files, repeated } = withoutRepeats(input.files);
  const drafted = files.map((file) => draftFile(file, input, own));

  // Weights are held against each other, and weigh the trials that cannot be weighed themselves.
  const weighing = weighSession(
    drafted.flatMap(({ weighed }) => weighed),
    enteredNewtons(input, own),
    own,
  );

  // Trials get events, events give measures.
  const analyzed = drafted.flatMap((file) => analyzeDrafts(file, weighing, input, own));

  // Plates are proved, sides compared, criteria evaluated.
  const result = concludeSession(input, { analyzed, weighing, unreadable: input.unreadable, repeated }, own);

  return {
    result,
    recordings: new Map(drafted.map(({ read }): [string, ReadRecording] => [read.file.path, read])),
    trials: new Map(analyzed.map((trial) => [trial.key, trial])),
  };
}
