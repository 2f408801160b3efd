import {
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import type { ListedSession } from "../files/read-folder.ts";
import { sessionFileName } from "../files/recording-names.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Where `--out` leads, checked before any work is done.
 * @throws UsageError when nothing can be written there, or when it is one of the inputs.
 */
export function checkOutputFile(typed: string, sessions: readonly ListedSession[]): string {
  const path = resolve(typed);
  const existing = statSync(path, { throwIfNoEntry: false });
  if (existing === undefined) {
    if (!(statSync(dirname(path), { throwIfNoEntry: false })?.isDirectory() ?? false)) {
      throw new UsageError(`--out cannot be ${typed}: its folder does not exist.`);
    }
    return path;
  }
  if (!existing.isFile()) throw new UsageError(`--out must name a file, and ${typed} is none.`);
  if (inputIdentities(sessions).has(identity(existing))) {
    throw new UsageError(`--out cannot be ${typed}: it is one of the inputs, and recordings are never written over.`);
  }
  return realpathSync(path);
}

/**
 * Writes a file whole or not at all: beside its place under another name, flushed, then renamed. What it says of an
 * athlete is its owner's alone to read, unless this same user had opened the file that was there to others.
 */
export function writeWhole(path: string, content: Uint8Array): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  const file = openSync(beside, "wx", 0o600);
  try {
    try {
      let written = 0;
      while (written < content.byteLength) written += writeSync(file, content, written);
      const replaced = statSync(path, { throwIfNoEntry: false });
      if (replaced !== undefined && replaced.uid === process.getuid?.()) fchmodSync(file, replaced.mode & 0o777);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/** Device and file number, so that links to an input are recognised under any name. */
function inputIdentities(sessions: readonly ListedSession[]): ReadonlySet<string> {
  const identities = new Set<string>();
  for (const { directory, names } of sessions) {
    for (const name of [...names, sessionFileName]) {
      const status = statSync(join(directory, name), { throwIfNoEntry: false });
      if (status !== undefined) identities.add(identity(status));
    }
  }
  return identities;
}

function identity({ dev, ino }: Stats): string {
  return `${dev}:${ino}`;
}
