import { type Finding, finding } from "./finding.ts";
import type { TrialResult } from "./result.ts";
import type { FileEntry, SessionDescription } from "./session.ts";

/** Entries of session.json that speak of a file or trial the session does not have. */
export function unusedEntries(description: SessionDescription, trials: readonly TrialResult[]): readonly Finding[] {
  return (description.files ?? [])
    .filter(
      (entry) =>
        !trials.some((each) => each.file === entry.file && (entry.trial === undefined || each.trial === entry.trial)),
    )
    .map((entry) =>
      finding(
        "session-entry-unused",
        "warning",
        `session.json speaks of ${entry.file}${entry.trial === undefined ? "" : `, trial ${entry.trial}`}, which is not in this session.`,
        "Correct the name in session.json, or add the file.",
        { where: entry.file },
      ),
    );
}

/** What was said about a trial: entries for the whole file first, then those for the trial itself. */
export function entryOf(description: SessionDescription, path: string, trial: number): Partial<FileEntry> {
  const entries = (description.files ?? []).filter((entry) => entry.file === path);
  const whole = entries.filter((entry) => entry.trial === undefined);
  const own = entries.filter((entry) => entry.trial === trial);
  return Object.assign({}, ...whole, ...own);
}
