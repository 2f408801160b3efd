import { lstatSync, realpathSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import { type LeftAside, leftAsideWords } from "../../core/recording/left-aside-words.ts";
import { type ListedSession, listFolder, listLooseFiles } from "../files/read-folder.ts";
import { comparePaths, isRecordingName, joinPath, sessionFileName } from "../files/recording-names.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Finds the sessions that files and folders on the command line mean, in the order of their paths, each once.
 * @param say told about what was left out.
 * @throws UsageError when there is nothing to read.
 */
export function findSessions(typed: readonly string[], say: (sentence: string) => void): readonly ListedSession[] {
  if (typed.length === 0) throw new UsageError("Name at least one recording or folder; --help shows examples.");
  const folders: ListedSession[] = [];
  const files: string[] = [];
  const leftAside: LeftAside[] = [];
  const leaveAside = (file: LeftAside) => void leftAside.push(file);
  for (const name of typed) {
    if (isFolder(name)) folders.push(...listFolder(name, leaveAside));
    else if (basename(name) === sessionFileName) continue;
    else if (isRecordingName(basename(name))) files.push(resolve(name));
    else leaveAside({ path: name, kind: "hidden file" });
  }
  const loose = listLooseFiles(files, leaveAside);
  const words = leftAsideWords(leftAside);
  if (folders.length === 0 && !loose.some(holdsSomething)) {
    throw new UsageError([nothingToRead(typed), words].filter((part) => part !== "").join(" "));
  }
  if (words !== "") say(words);
  const sessions = eachOnce([...folders, ...loose]);
  for (const path of pathsOfSeveral(sessions)) {
    say(`${path} was found under more than one argument; name their common folder to tell the results apart.`);
  }
  return sessions.toSorted((first, second) => comparePaths(first.folder, second.folder));
}

function isFolder(name: string): boolean {
  return statSync(name, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

function holdsSomething({ directory, names, unreadable }: ListedSession): boolean {
  return names.length > 0 || unreadable.some(({ path }) => isThere(resolve(directory, path)));
}

/** Something lies at the path, be it a link that leads nowhere. */
function isThere(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

function nothingToRead(typed: readonly string[]): string {
  const [first = ""] = typed;
  if (typed.length > 1) return `There are no recordings among ${typed.join(", ")}.`;
  if (isFolder(first)) return `There are no recordings in ${first}.`;
  return isThere(resolve(first)) ? `${first} is no recording.` : `${first} is not there.`;
}

function eachOnce(sessions: readonly ListedSession[]): readonly ListedSession[] {
  const whole = new Map<string, ListedSession>();
  const loose: ListedSession[] = [];
  for (const session of sessions) {
    const directory = realDirectory(session.directory);
    if (session.loose) {
      if (!whole.has(directory)) loose.push(session);
    } else if (!whole.has(directory)) whole.set(directory, session);
  }
  return [...whole.values(), ...loose];
}

function realDirectory(directory: string): string {
  return isThere(directory) ? realpathSync(directory) : directory;
}

function pathsOfSeveral(sessions: readonly ListedSession[]): readonly string[] {
  const seen = new Set<string>();
  const several = new Set<string>();
  for (const { folder, names, unreadable } of sessions) {
    for (const name of [...names, ...unreadable.map((each) => each.path)]) {
      const path = joinPath(folder, name);
      if (seen.has(path)) several.add(path);
      seen.add(path);
    }
  }
  return [...several];
}
