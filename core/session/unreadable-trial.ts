import { proseFinding } from "../ground/finding.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { refusedFile } from "./refused-file.ts";
import type { UnreadableFile } from "./session-input.ts";

/** A file that could not even be opened, as a refused trial: it is reported and costs nothing else. */
export function unreadableTrial(file: UnreadableFile): TrialResult {
  const reason = proseFinding(
    "unreadable",
    "refusal",
    `The file could not be read because it ${file.reason}.`,
    "Check that the file is there and may be read, then import it again.",
    { where: file.path },
  );
  return refusedFile(file.path, "", reason);
}
