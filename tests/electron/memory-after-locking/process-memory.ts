import { closeSync, openSync, readFileSync, readSync } from "node:fs";

/** Why the memory of another process cannot be read here, in one sentence; undefined where it can. */
export function whyNotReadable(): string | undefined {
  try {
    closeSync(openSync(`/proc/${process.pid}/mem`, "r"));
    readFileSync(`/proc/${process.pid}/maps`);
  } catch {
    return "This system does not show the memory of a process under /proc.";
  }
  return process.getuid?.() === 0 ? undefined : "Only the administrator may read the memory of another process here.";
}

/** A piece is read at a time; the end of one is searched again with the beginning of the next. */
const pieceBytes = 16 * 1024 * 1024;

/** How often each of these stands in the memory of a process: all of it that can be read, and how many bytes that is. */
export function searchMemory(
  pid: number,
  needles: ReadonlyMap<string, Uint8Array>,
): { readonly counts: ReadonlyMap<string, number>; readonly bytes: number } {
  const counts = new Map([...needles.keys()].map((name) => [name, 0]));
  const overlap = Math.max(...[...needles.values()].map(({ byteLength }) => byteLength)) - 1;
  const memory = openSync(`/proc/${pid}/mem`, "r");
  let bytes = 0;
  try {
    for (const { start, end } of readableRanges(pid)) {
      for (let at = start; at < end; at += pieceBytes) {
        const piece = readAt(memory, at, Math.min(end - at, pieceBytes + overlap));
        if (piece === undefined) break;
        bytes += Math.min(piece.byteLength, pieceBytes);
        for (const [name, needle] of needles) {
          counts.set(name, (counts.get(name) ?? 0) + occurrences(piece, needle, pieceBytes));
        }
      }
    }
  } finally {
    closeSync(memory);
  }
  return { counts, bytes };
}

function readableRanges(pid: number): readonly { readonly start: number; readonly end: number }[] {
  return readFileSync(`/proc/${pid}/maps`, "utf8")
    .split("\n")
    .flatMap((line) => {
      const [, start, end, rights] = /^([0-9a-f]+)-([0-9a-f]+) (\S+)/.exec(line) ?? [];
      const isOfKernel = /\[(?:vvar|vsyscall|vvar_vclock)\]/.test(line);
      if (start === undefined || end === undefined || isOfKernel || !rights?.startsWith("r")) return [];
      return [{ start: Number.parseInt(start, 16), end: Number.parseInt(end, 16) }];
    });
}

/** @returns undefined where nothing lies behind the address */
function readAt(memory: number, at: number, length: number): Buffer | undefined {
  const piece = Buffer.allocUnsafe(length);
  try {
    return piece.subarray(0, readSync(memory, piece, 0, length, at));
  } catch {
    return undefined;
  }
}

/** Those that begin before `limit`. */
function occurrences(piece: Buffer, needle: Uint8Array, limit: number): number {
  let count = 0;
  for (let at = piece.indexOf(needle); at !== -1 && at < limit; at = piece.indexOf(needle, at + 1)) count += 1;
  return count;
}
