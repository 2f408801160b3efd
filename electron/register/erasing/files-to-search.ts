import { type Dirent, existsSync, readdirSync, realpathSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { backupFolder, demoOriginalStart, keptBackups } from "../register-folder.ts";
import type { SearchedFile } from "../register-views.ts";

/** Files in which something of a person could stand, and what was not looked at. */
interface FilesToSearch {
  readonly files: readonly Pick<SearchedFile, "path" | "is">[];
  /** One sentence each. */
  readonly leftOut: readonly string[];
}

/** Most files of a folder of the person's data: one that was set to a whole disk must not be read for hours. */
const mostFiles = 20_000;

/**
 * The register, its log, every file beside it that bears its name, its backups, and everything in the folder of the
 * person's data: layouts, preferences, whatever programs left there.
 * @param registerFile its real path
 */
export function filesToSearch(registerFile: string, dataFolder: string | undefined): FilesToSearch {
  const below = [backupFolder(registerFile), ...(dataFolder === undefined ? [] : [resolve(dataFolder)])].map(
    belowFolder,
  );
  const backups = keptBackups(registerFile);
  const inFolders = below.flatMap(({ files }) => files);
  const found = new Set([...besides(registerFile), ...backups.filter((path) => existsSync(path)), ...inFolders]);
  const astray = below.flatMap(({ links }) => links).filter((link) => !found.has(behind(link) ?? ""));
  // Opening the file of the lock would let go of it, and one that only indexes the log holds no content.
  const paths = [...found].filter((path) => path !== `${registerFile}-lock` && path !== `${registerFile}-shm`);
  const kindOf = (path: string): SearchedFile["is"] => {
    if (path === registerFile) return "register";
    if (path === `${registerFile}-wal`) return "log";
    return backups.includes(path) ? "backup" : "other";
  };
  return {
    files: paths.map((path) => ({ path, is: kindOf(path) })),
    leftOut: [
      ...below.flatMap(({ troubles }) => troubles),
      ...astray.map((path) => `${path} is a link; what it leads to was not searched.`),
    ],
  };
}

/** The register and what programs keep beside it under its name, finished or not. */
function besides(registerFile: string): readonly string[] {
  const folder = dirname(registerFile);
  const name = basename(registerFile);
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && (entry.name.startsWith(name) || entry.name.startsWith(`.${name}`)))
    .map((entry) => join(folder, entry.name));
}

function belowFolder(folder: string) {
  const entries = entriesBelow(folder);
  const pathOf = ({ parentPath, name }: Dirent) => join(parentPath, name);
  // The demo's recordings lie on every computer and are nobody's.
  const files = entries?.filter((entry) => entry.isFile() && !entry.name.startsWith(demoOriginalStart)) ?? [];
  const links = entries?.filter((entry) => entry.isSymbolicLink()) ?? [];
  const troubles = [
    ...(entries === undefined ? [`${folder} could not be searched: this user may not read all of it.`] : []),
    ...(files.length > mostFiles
      ? [`${folder} holds ${files.length} files, of which the first ${mostFiles} were searched.`]
      : []),
  ];
  return {
    files: files.slice(0, mostFiles).map((entry) => realpathSync.native(pathOf(entry))),
    links: links.map(pathOf),
    troubles,
  };
}

/** None where there is no such folder; undefined where it cannot be read. */
function entriesBelow(folder: string): readonly Dirent[] | undefined {
  try {
    return existsSync(folder) ? readdirSync(folder, { withFileTypes: true, recursive: true }) : [];
  } catch {
    return undefined;
  }
}

function behind(link: string): string | undefined {
  return existsSync(link) ? realpathSync.native(link) : undefined;
}
