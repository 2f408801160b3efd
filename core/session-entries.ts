import { type Finding, finding } from "./finding.ts";
import type { TrialResult } from "./result.ts";
import type { SessionDescription } from "./session.ts";

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
