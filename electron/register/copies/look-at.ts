import { statSync } from "node:fs";
import { dirname } from "node:path";
import { type ByteSource, openFile } from "../byte-source.ts";
import { isSealed } from "../sealed-file.ts";

/** What a file is by its first bytes. */
export type Holding = "database" | "sealed" | "archive";

/** What lies at the place of a copy. */
export type Look =
  | {
      readonly state: "there";
      readonly holds: Holding;
      readonly byteLength: number;
      readonly fileChangedAt: number;
    }
  /** Why it cannot be reached, in one sentence. */
  | { readonly state: "unreachable"; readonly because: string };

/**
 * Looks at a place without opening what lies there as what it is.
 * @param expected what was put there; anything else is no copy any more
 */
export function lookAt(path: string, expected: readonly Holding[]): Look {
  try {
    const { size, mtimeMs } = statSync(path);
    // Opening a pipe would wait for who writes into it.
    if (!statSync(path).isFile()) return unreachable("What lies there is no file.");
    const holds = contentOf(path);
    if (holds === undefined || !expected.includes(holds)) return unreachable(somethingElse);
    return { state: "there", holds, byteLength: size, fileChangedAt: mtimeMs };
  } catch (error) {
    return unreachable(sentenceOf(error, path));
  }
}

const somethingElse = "What lies there now is not what was put there: the file was damaged or replaced.";

function unreachable(because: string): Look {
  return { state: "unreachable", because };
}

function contentOf(path: string): Holding | undefined {
  const source = openFile(path);
  try {
    if (isSealed(source)) return "sealed";
    const begins = (letters: string) => beginsWith(source, letters);
    if (begins("SQLite format 3\0")) return "database";
    return begins("PK\u0003\u0004") ? "archive" : undefined;
  } finally {
    source.close();
  }
}

function beginsWith(source: ByteSource, letters: string): boolean {
  return Buffer.from(source.read(0, letters.length)).toString("latin1") === letters;
}

/** @throws what is our own mistake */
function sentenceOf(error: unknown, path: string): string {
  const code = error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : undefined;
  if (code === undefined) throw error;
  if (code === "ENOENT" || code === "ENOTDIR") {
    const hasFolder = statSync(dirname(path), { throwIfNoEntry: false })?.isDirectory() ?? false;
    return hasFolder
      ? "There is no such file: it was deleted or moved, or another disk is connected in its place."
      : "Its folder is not there: its disk may not be connected, or the folder was moved or deleted.";
  }
  if (code === "EACCES" || code === "EPERM") return "It cannot be read by this user.";
  if (code === "ELOOP") return "It is a link that leads nowhere.";
  return `It cannot be read: the disk answers ${code}.`;
}
