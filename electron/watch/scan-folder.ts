import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { comparePaths, isRecordingName, joinPath, sessionFileName } from "../files/recording-names.ts";

/** A file as one look at a folder saw it. */
export interface SeenFile {
  /** Relative to the folder, forward slashes. */
  readonly path: string;
  readonly size: number;
  readonly changedAt: number;
}

/** Folders nested deeper than this are left alone: a session's folder is near. */
const deepestFolder = 4;

/**
 * Every recording and session.json in a folder and below it, in the order of their paths. Waits for the file system
 * without holding anything else up, as a folder on a network can take its time.
 * @throws the file system's own error when the folder itself cannot be read
 */
export async function scanFolder(root: string): Promise<readonly SeenFile[]> {
  const seen: SeenFile[] = [];
  await scan(root, "", 0, seen);
  return seen.toSorted((first, second) => comparePaths(first.path, second.path));
}

async function scan(root: string, folder: string, depth: number, seen: SeenFile[]): Promise<void> {
  const entries = await readdir(join(root, folder), { withFileTypes: true });
  for (const entry of entries) {
    const path = joinPath(folder, entry.name);
    if (entry.name.startsWith(".")) continue;
    if (entry.isDirectory()) {
      // A folder below that vanishes or may not be read costs only itself.
      if (depth < deepestFolder) await scan(root, path, depth + 1, seen).catch(ignore);
    } else if (entry.isFile() && (isRecordingName(entry.name) || entry.name === sessionFileName)) {
      const status = await stat(join(root, path)).catch(ignore);
      if (status !== undefined) seen.push({ path, size: status.size, changedAt: status.mtimeMs });
    }
  }
}

function ignore(): undefined {
  return undefined;
}
