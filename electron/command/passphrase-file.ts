import { closeSync, fstatSync, openSync, readSync, type Stats } from "node:fs";
import { passphraseBytes } from "../register/passphrase-bytes.ts";
import { UsageError } from "./usage-error.ts";

/** A line beyond this is none that a person typed; it also ends what never ends by itself. */
const mostBytes = 4000;

/**
 * The passphrase in the first line of a file, or of what a pipe or a terminal brings.
 * @throws UsageError when it cannot be read, holds none, or is a file that other users can read or change; Windows tells
 *   nothing of that in the file's mode, so there it is not looked at
 */
export function readPassphraseFile(path: string): Uint8Array {
  const file = opened(path);
  const bytes = Buffer.alloc(mostBytes + 1);
  try {
    requirePrivate(path, fstatSync(file));
    let length = 0;
    while (length < bytes.byteLength && !bytes.subarray(0, length).includes("\n")) {
      const read = readSync(file, bytes, length, bytes.byteLength - length, null);
      if (read === 0) break;
      length += read;
    }
    const newline = bytes.subarray(0, length).indexOf("\n");
    const end = newline === -1 ? length : newline;
    if (end > mostBytes) throw new UsageError(`The first line of ${path} is longer than ${mostBytes} bytes.`);
    const passphrase = passphraseBytes(bytes.toString("utf8", 0, end).replace(/\r$/, ""));
    if (passphrase.byteLength > 0) return passphrase;
    throw new UsageError(`The first line of ${path} is empty; a passphrase is expected there.`);
  } catch (error) {
    throw error instanceof UsageError ? error : unreadable(path);
  } finally {
    bytes.fill(0);
    closeSync(file);
  }
}

function opened(path: string): number {
  try {
    return openSync(path, "r");
  } catch {
    throw unreadable(path);
  }
}

function unreadable(path: string): UsageError {
  return new UsageError(`The passphrase file ${path} cannot be read.`);
}

/** A pipe, a terminal or a process substitution lies nowhere for others to read. */
function requirePrivate(path: string, status: Stats): void {
  const user = process.getuid?.();
  if (user === undefined || !status.isFile()) return;
  if (status.uid !== user && status.uid !== 0) {
    throw new UsageError(
      `The passphrase file ${path} belongs to another user, who can read it: use a file of your own.`,
    );
  }
  if ((status.mode & 0o077) !== 0) {
    throw new UsageError(
      `The passphrase file ${path} can be read or changed by other users of this computer: chmod 600 keeps it to yourself.`,
    );
  }
}
