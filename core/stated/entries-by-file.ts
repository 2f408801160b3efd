import type { FileEntry } from "./file-entry.ts";
import type { SessionDescription } from "./session.ts";

const nothing: readonly FileEntry[] = [];

/** Gathered once for each list: a session of thousands of files is asked about every one of them. */
const gathered = new WeakMap<readonly FileEntry[], ReadonlyMap<string, readonly FileEntry[]>>();

/** What a session's description says of one file and of its trials, in the order of the description. */
export function entriesOfFile({ files }: Pick<SessionDescription, "files">, path: string): readonly FileEntry[] {
  if (files === undefined) return nothing;
  const known = gathered.get(files) ?? byFile(files);
  gathered.set(files, known);
  return known.get(path) ?? nothing;
}

function byFile(files: readonly FileEntry[]): ReadonlyMap<string, readonly FileEntry[]> {
  const groups = new Map<string, FileEntry[]>();
  for (const entry of files) {
    const group = groups.get(entry.file);
    if (group === undefined) groups.set(entry.file, [entry]);
    else group.push(entry);
  }
  return groups;
}
