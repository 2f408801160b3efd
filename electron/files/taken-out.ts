import { countOf } from "../../core/ground/plain-words.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { comparePaths } from "./recording-names.ts";

/** The step in words. */
export function takeOutWords(paths: readonly string[]): string {
  const [only] = paths;
  return `Take ${paths.length === 1 && only !== undefined ? only : countOf(paths.length, "recording")} out of the session`;
}

/** What is said of a session without what was said of some of its recordings. */
export function withoutEntriesOf(description: SessionDescription, paths: readonly string[]): SessionDescription {
  const { files, ...others } = description;
  const left = files?.filter((entry) => !paths.includes(entry.file)) ?? [];
  return left.length === 0 ? others : { ...others, files: left };
}

/** The recordings without those that were taken out; another one that came in under the same name since stays. */
export function withoutFiles(
  files: readonly RecordingFile[],
  takenOut: readonly RecordingFile[],
): readonly RecordingFile[] {
  return files.filter((file) => !takenOut.some(({ path, sha256 }) => path === file.path && sha256 === file.sha256));
}

/** The recordings with those that were taken out before; one whose name was given away since comes back beside it. */
export function broughtBack(
  files: readonly RecordingFile[],
  takenOut: readonly RecordingFile[],
): readonly RecordingFile[] {
  let all = files;
  for (const file of takenOut) {
    const same = all.find(({ path }) => path === file.path);
    if (same?.sha256 === file.sha256) continue;
    all = [...all, { ...file, path: freePath(file.path, new Set(all.map(({ path }) => path))) }];
  }
  return all.toSorted((first, second) => comparePaths(first.path, second.path));
}

/** "jump.csv", "jump (2).csv", …: the first that is not taken. */
export function freePath(path: string, taken: ReadonlySet<string>): string {
  if (!taken.has(path)) return path;
  const [, start = path, ending = ""] = /^(.*?)(\.[^./]*)?$/s.exec(path) ?? [];
  for (let number = 2; ; number += 1) {
    const other = `${start} (${number})${ending}`;
    if (!taken.has(other)) return other;
  }
}
