import { lstatSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { RequestRefused } from "../refusals/request-refused.ts";

/**
 * Where a file truly lies, whatever links lead to it; for one that is not there yet, where it would be made. Lock, log
 * and backups take their places from this name, so that two ways to one register always meet.
 * @throws RequestRefused when the name is a link that leads nowhere
 */
export function realPath(path: string): string {
  const place = resolve(path);
  try {
    return realpathSync.native(place);
  } catch (error) {
    if (!isMissing(error)) return place;
  }
  if (lstatSync(place, { throwIfNoEntry: false })?.isSymbolicLink()) {
    throw new RequestRefused(`${place} is a link to a place where no file is. Name the file itself.`);
  }
  return join(realFolder(dirname(place)), basename(place));
}

/** Two names, through links or as second names of one file, are the same file. */
export function isSameFile(one: string, other: string): boolean {
  const [first, second] = [one, other].map((path) => statSync(path, { throwIfNoEntry: false, bigint: true }));
  if (first === undefined || second === undefined) return realPath(one) === realPath(other);
  return first.dev === second.dev && first.ino === second.ino;
}

/** How many names a file has in its file system; 1 where it is not there. */
export function namesOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.nlink ?? 1;
}

/** A folder that is not there is refused later, by what needs it. */
function realFolder(folder: string): string {
  try {
    return realpathSync.native(folder);
  } catch (error) {
    if (isMissing(error)) return folder;
    throw error;
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && "code" in error && (error.code === "ENOENT" || error.code === "ENOTDIR");
}
