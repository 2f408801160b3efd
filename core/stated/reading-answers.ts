import { type RememberedAnswers, statedAboutReading } from "../recording/reading-statements.ts";
import type { FileEntry } from "./file-entry.ts";

/** What an entry states about the reading of its file, as answers: its columns one by one, and that they state feet. */
export function readingAnswers(entry: Partial<FileEntry>): RememberedAnswers {
  const { columns, ...others } = statedAboutReading(entry);
  const statesFeet = columns?.left !== undefined || columns?.right !== undefined;
  return { ...others, ...columns, ...(statesFeet ? { platesStated: true } : {}) };
}
