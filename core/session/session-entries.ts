import { type Finding, proseFinding } from "../ground/finding.ts";
import { listInWords } from "../ground/plain-words.ts";
import { trialKey } from "../ground/trial-key.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { entriesOfFile } from "../stated/entries-by-file.ts";
import type { FileEntry } from "../stated/file-entry.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { KeptTrial } from "../stated/stated-options.ts";

/**
 * So many are said one by one; of more, one finding lists them, because they most often have one cause. No setting: it
 * shortens a sentence.
 */
const mostAlone = 2;
/** A sentence names so many. No setting: it shortens a sentence. */
const mostNamed = 20;

/** Entries of session.json that speak of a file or trial the session does not have. */
export function unusedEntries(description: SessionDescription, trials: readonly TrialResult[]): readonly Finding[] {
  const files = new Set(trials.map(({ file }) => file));
  const keys = new Set(trials.map(({ file, trial }) => trialKey(file, trial)));
  const unused = (description.files ?? []).filter(({ file, trial }) =>
    trial === undefined ? !files.has(file) : !keys.has(trialKey(file, trial)),
  );
  if (unused.length <= mostAlone) {
    return unused.map((entry) =>
      unusedEntry(
        `session.json speaks of ${entryName(entry)}, which is not in this session.`,
        "Correct the name in session.json, or add the file.",
        entry.file,
      ),
    );
  }
  const named = unused.slice(0, mostNamed).map(entryName);
  const more = unused.length - named.length;
  const names = more === 0 ? listInWords(named) : `${named.join(", ")} and ${more} more`;
  return [
    unusedEntry(
      `session.json speaks of ${unused.length} files or trials which are not in this session: ${names}.`,
      "Correct the names in session.json, or add the files.",
      "session.json",
    ),
  ];
}

/** Trials that an option keeps and the session does not have. */
export function unusedKept(keep: readonly KeptTrial[] = [], trials: readonly TrialResult[]): readonly Finding[] {
  return keep
    .filter((kept) => !trials.some((each) => each.file === kept.file && each.trial === (kept.trial ?? each.trial)))
    .map((kept) =>
      unusedEntry(`${entryName(kept)} is to be kept and is not in this session.`, "Correct the number.", kept.file),
    );
}

function unusedEntry(message: string, action: string, where: string): Finding {
  return proseFinding("session-entry-unused", "warning", message, action, { where });
}

function entryName({ file, trial }: FileEntry): string {
  return trial === undefined ? file : `${file} (trial ${trial})`;
}

/** What was said about a trial: entries for the whole file first, then those for the trial itself. */
export function entryOf(description: SessionDescription, path: string, trial: number): Partial<FileEntry> {
  const entries = entriesOfFile(description, path);
  const whole = entries.filter((entry) => entry.trial === undefined);
  const own = entries.filter((entry) => entry.trial === trial);
  return Object.assign({}, ...whole, ...own);
}
