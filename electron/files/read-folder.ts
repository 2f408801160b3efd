import {
  closeSync,
  type Dirent,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  realpathSync,
  type Stats,
  statSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { sessionFileLimits } from "../../core/bytes/json-bounds.ts";
import { type Finding, finding } from "../../core/ground/finding.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { LeftAside } from "../../core/recording/left-aside-words.ts";
import type { OtherKind } from "../../core/recording/other-kinds.ts";
import type { SessionInput, UnreadableFile } from "../../core/session/session-input.ts";
import { parseSessionFile } from "../../core/stated/session-file.ts";
import { readUpTo } from "../bounded-json/read-up-to.ts";
import { headBytes } from "./left-aside/file-signature.ts";
import { isNamed, otherKindOf } from "./left-aside/other-kind.ts";
import { comparePaths, isRecordingName, joinPath, sessionFileName } from "./recording-names.ts";
import { recordingFile } from "./stored-session.ts";

/** A folder with recordings, found but not read yet. */
export interface ListedSession {
  /** Relative to the argument it was found under; "" for the argument itself and for loose files. */
  readonly folder: string;
  /** Where it lies on this machine; never part of a result. */
  readonly directory: string;
  /** Names of the recordings in it, sorted. */
  readonly names: readonly string[];
  readonly unreadable: readonly UnreadableFile[];
  /** True when single files were named rather than their folder. */
  readonly loose: boolean;
}

/** A session as read; what was stated on the command line joins it later. */
export type FoundSession = Omit<SessionInput, "stated">;

/** Larger files are not read. */
const fileByteLimit = 1024 * 1024 * 1024;

/** Is told of each file that is no recording, with its path below what was named. */
export type LeaveAside = (file: LeftAside) => void;

/**
 * Finds every folder with recordings in and below `root`, in the order of their paths. Links to folders are followed once.
 * Hidden files and folders are not looked at.
 */
export function listFolder(root: string, leaveAside: LeaveAside = () => {}): readonly ListedSession[] {
  const found: ListedSession[] = [];
  walk(root, "", new Set(), found, leaveAside);
  return found.toSorted((first, second) => comparePaths(first.folder, second.folder));
}

/** Groups single files by the folder they lie in, so that its session.json describes them; folders in order of mention. */
export function listLooseFiles(paths: readonly string[], leaveAside: LeaveAside = () => {}): readonly ListedSession[] {
  const directories = [...new Set(paths.map((path) => dirname(path)))];
  return directories.flatMap((directory) => {
    const members = new Set(paths.filter((path) => dirname(path) === directory));
    const looks = [...members].map((path) => ({ name: basename(path), look: lookInto(path) }));
    const listed = sorted(looks, { folder: "", directory }, leaveAside);
    return isEmpty(listed) ? [] : [{ folder: "", directory, ...listed, loose: true }];
  });
}

/** Reads what was listed: bytes exactly as they lie there, and the session's description. */
export function readSession(listed: ListedSession): FoundSession {
  const files: RecordingFile[] = [];
  const unreadable = [...listed.unreadable];
  for (const name of listed.names) {
    const read = readListedFile(listed.directory, name);
    if (read.kind === "recording") files.push(read.file);
    else if (read.kind === "unreadable") unreadable.push({ path: name, reason: read.reason });
  }
  return { folder: listed.folder, files, unreadable, ...readDescription(listed) };
}

/** One listed file: a recording, or why it cannot be read. */
export type ListedFile =
  | { readonly kind: "recording"; readonly file: RecordingFile }
  | { readonly kind: "unreadable"; readonly reason: string };

export function readListedFile(directory: string, name: string): ListedFile {
  try {
    return { kind: "recording", file: recordingFile(name, readFileSync(join(directory, name))) };
  } catch (error) {
    return { kind: "unreadable", reason: reasonOf(error) };
  }
}

/** Reads every session in and below a folder. */
export function readFolder(root: string): readonly FoundSession[] {
  return listFolder(root).map(readSession);
}

function walk(
  root: string,
  folder: string,
  visited: Set<string>,
  found: ListedSession[],
  leaveAside: LeaveAside,
): void {
  const directory = join(root, folder);
  const identity = realpathSync(directory);
  if (visited.has(identity)) return;
  visited.add(identity);
  const looks: NamedLook[] = [];
  for (const entry of visibleEntries(directory)) {
    const path = join(directory, entry.name);
    const look = isRecordingName(entry.name) ? lookInto(path) : lookAt(path);
    if (look === "folder") {
      try {
        walk(root, joinPath(folder, entry.name), visited, found, leaveAside);
      } catch (error) {
        looks.push({ name: entry.name, look: { reason: reasonOf(error) } });
      }
    } else if (isRecordingName(entry.name)) looks.push({ name: entry.name, look });
  }
  const listed = sorted(looks, { folder, directory }, leaveAside);
  if (!isEmpty(listed)) found.push({ folder, directory, ...listed, loose: false });
}

function visibleEntries(directory: string): readonly Dirent[] {
  return readdirSync(directory, { withFileTypes: true }).filter((entry) => !entry.name.startsWith("."));
}

/** What lies at a path: a file to read, a folder to walk, or why it cannot be read. */
type Look = "file" | "folder" | { readonly reason: string };

/** The same for what may be a recording: a file may turn out to be something else. */
type CloseLook = Look | { readonly kind: OtherKind };

interface NamedLook {
  readonly name: string;
  readonly look: CloseLook;
}

function lookInto(path: string): CloseLook {
  const look = lookAt(path);
  if (look !== "file") return look;
  try {
    const { head, byteLength } = readHead(path);
    const kind = otherKindOf(basename(path), head, byteLength);
    return kind === undefined ? look : { kind };
  } catch (error) {
    return { reason: reasonOf(error) };
  }
}

function readHead(path: string): { readonly head: Uint8Array; readonly byteLength: number } {
  const { size } = statSync(path);
  const file = openSync(path, "r");
  try {
    const head = new Uint8Array(Math.min(size, headBytes));
    const read = readSync(file, head, 0, head.length, 0);
    return { head: head.subarray(0, read), byteLength: size };
  } finally {
    closeSync(file);
  }
}

function lookAt(path: string): Look {
  let status: Stats;
  try {
    status = statSync(path);
  } catch (error) {
    return { reason: isLink(path) ? "is a link to something that is not there" : reasonOf(error) };
  }
  if (status.isDirectory()) return "folder";
  // A pipe or a device is never opened: reading it could wait for ever.
  if (!status.isFile()) return { reason: "is not a regular file" };
  return status.size > fileByteLimit ? { reason: "is larger than 1 GB" } : "file";
}

function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() ?? false;
}

/** The looks in order; a file that is none stays all the same where the folder's session.json calls it a recording. */
function sorted(
  looks: readonly NamedLook[],
  { folder, directory }: Pick<ListedSession, "folder" | "directory">,
  leaveAside: LeaveAside,
) {
  const ordered = looks.toSorted((first, second) => comparePaths(first.name, second.name));
  const hasOthers = looks.some(({ look }) => typeof look === "object" && "kind" in look);
  const described = hasOthers ? readDescription({ directory, names: [], loose: false }).description : {};
  const names: string[] = [];
  const unreadable: UnreadableFile[] = [];
  for (const { name, look } of ordered) {
    if (typeof look === "string") names.push(name);
    else if (!("kind" in look)) unreadable.push({ path: name, reason: look.reason });
    else if (isNamed(described, name)) names.push(name);
    else leaveAside({ path: joinPath(folder, name), kind: look.kind });
  }
  return { names, unreadable };
}

function isEmpty({ names, unreadable }: Pick<ListedSession, "names" | "unreadable">): boolean {
  return names.length + unreadable.length === 0;
}

/** What session.json says about what was listed; nothing where there is none. */
export function readDescription(
  listed: Pick<ListedSession, "directory" | "names" | "loose">,
): Pick<FoundSession, "description" | "descriptionFindings"> {
  const path = join(listed.directory, sessionFileName);
  const look = lookAt(path);
  if (look === "folder") return { description: {}, descriptionFindings: [] };
  const absent = lstatSync(path, { throwIfNoEntry: false }) === undefined;
  if (absent) return { description: {}, descriptionFindings: [] };
  if (look !== "file") return { description: {}, descriptionFindings: [unreadableDescription(look.reason)] };
  let bytes: Uint8Array;
  try {
    bytes = readUpTo(path, sessionFileLimits.bytes);
  } catch (error) {
    return { description: {}, descriptionFindings: [unreadableDescription(reasonOf(error))] };
  }
  const { description, findings } = parseSessionFile(bytes);
  if (!listed.loose || description.files === undefined) return { description, descriptionFindings: findings };
  // Only some files of the folder were named: what is said about the others is not "unused".
  const named = new Set(listed.names);
  const files = description.files.filter((entry) => named.has(entry.file));
  return { description: { ...description, files }, descriptionFindings: findings };
}

function unreadableDescription(reason: string): Finding {
  return finding("session-unreadable/file", "warning", { reason }, { place: { at: "name", name: sessionFileName } });
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "is not there",
  EACCES: "may not be read by this user",
  EPERM: "may not be read by this user",
  ELOOP: "is a link that leads back to itself",
  ENAMETOOLONG: "has too long a name",
};

function reasonOf(error: unknown): string {
  const code = codeOf(error);
  if (code === undefined) throw error;
  return reasons[code] ?? `could not be read (${code})`;
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : undefined;
}
