import { finding } from "../ground/finding.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { refusedFile } from "./refused-file.ts";

/** What tells recordings apart. */
export interface HashedFile {
  readonly path: string;
  readonly sha256: string;
}

/** A session's files, each recording once, and what became of the others. */
export interface DistinctRecordings<File extends HashedFile> {
  readonly files: readonly File[];
  readonly repeated: readonly TrialResult[];
}

/**
 * Counts a recording once: files with the same bytes are one jump, however often they were copied, and would make a
 * spread between trials that nobody measured. The first by name stays; each other one becomes a refused trial.
 */
export function withoutRepeats<File extends HashedFile>(all: readonly File[]): DistinctRecordings<File> {
  const first = new Map<string, string>();
  const files: File[] = [];
  const repeated: TrialResult[] = [];
  for (const file of all.toSorted((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const known = first.get(file.sha256);
    if (known === undefined) {
      first.set(file.sha256, file.path);
      files.push(file);
    } else repeated.push(repeatedTrial(file, known));
  }
  return { files, repeated };
}

function repeatedTrial(file: HashedFile, known: string): TrialResult {
  const place = { at: "name", name: file.path } as const;
  const reason = finding("recording-repeated", "refusal", { first: known }, { place, answers: [{ leftOut: true }] });
  return refusedFile(file.path, file.sha256, reason);
}
