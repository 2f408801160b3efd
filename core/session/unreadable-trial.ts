import { finding } from "../ground/finding.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { refusedFile } from "./refused-file.ts";
import type { UnreadableFile } from "./session-input.ts";

/** A file that could not even be opened, as a refused trial: it is reported and costs nothing else. */
export function unreadableTrial(file: UnreadableFile): TrialResult {
  const place = { at: "name", name: file.path } as const;
  const reason = finding("unreadable/file", "refusal", { reason: file.reason }, { place });
  return refusedFile(file.path, "", reason);
}
