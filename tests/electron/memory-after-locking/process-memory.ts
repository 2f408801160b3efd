import { closeSync, openSync, readFileSync, readSync } from "node:fs";
import { Patterns } from "./patterns.ts";

/** Why the memory of another process cannot be read here, in one sentence; undefined where it can. */
export function whyNotReadable(): string | undefined {
  try {
    closeSync(openSync(`/proc/${process.pid}/mem`, "r"));
    readFileSync(`/proc/${process.pid}/maps`);
    closeSync(openSync(`/proc/${process.pid}/pagemap`, "r"));
  } catch {
    return "This system does not show the memory of a process under /proc.";
  }
  return process.getuid?.() === 0 ? undefined : "Only the administrator may read the memory of another process here.";
}

/** A piece is read at a time; the end of one is searched again with the beginning of the next. */
const pieceBytes = 4 * 1024 * 1024;

const pageBytes = 4096;

/** How often each of these stands in the memory of a process: all pages of it that hold something, and how many bytes those are. */
export function searchMemory(
  pid: number,
  needles: ReadonlyMap<string, Uint8Array>,
): { readonly counts: ReadonlyMap<string, number>; readonly bytes: number } {
  const patterns = new Patterns(needles);
  const piece = Buffer.alloc(pieceBytes + patterns.longest);
  const memory = openSync(`/proc/${pid}/mem`, "r");
  let bytes = 0;
  try {
    for (const { start, end } of filledRanges(pid)) {
      for (let at = start; at < end; at += pieceBytes) {
        const length = readAt(memory, at, piece.subarray(0, Math.min(end - at, piece.byteLength)));
        if (length === 0) break;
        bytes += Math.min(length, pieceBytes);
        patterns.search(piece.subarray(0, length), pieceBytes);
      }
    }
  } finally {
    closeSync(memory);
  }
  return { counts: patterns.counts, bytes };
}

interface Range {
  readonly start: number;
  readonly end: number;
}

/** What can be read of a process and was ever used: pages without content are left out, they are most of it. */
function filledRanges(pid: number): readonly Range[] {
  const pages = openSync(`/proc/${pid}/pagemap`, "r");
  try {
    return readableRanges(pid).flatMap((range) => filledParts(pages, range));
  } finally {
    closeSync(pages);
  }
}

function readableRanges(pid: number): readonly Range[] {
  return readFileSync(`/proc/${pid}/maps`, "utf8")
    .split("\n")
    .flatMap((line) => {
      const [, start, end, rights] = /^([0-9a-f]+)-([0-9a-f]+) (\S+)/.exec(line) ?? [];
      const isOfKernel = /\[(?:vvar|vsyscall|vvar_vclock)\]/.test(line);
      if (start === undefined || end === undefined || isOfKernel || !rights?.startsWith("r")) return [];
      return [{ start: Number.parseInt(start, 16), end: Number.parseInt(end, 16) }];
    });
}

/** The kernel tells eight bytes of each page; the two highest bits say that it is in memory or in the swap. */
function filledParts(pages: number, { start, end }: Range): readonly Range[] {
  const told = Buffer.alloc(((end - start) / pageBytes) * 8);
  const length = readSync(pages, told, 0, told.byteLength, (start / pageBytes) * 8);
  const parts: Range[] = [];
  for (let at = 0; at < length; at += 8) {
    if ((told[at + 7] ?? 0) < 0x40) continue;
    const page = start + (at / 8) * pageBytes;
    const last = parts.at(-1);
    if (last?.end === page) parts[parts.length - 1] = { start: last.start, end: page + pageBytes };
    else parts.push({ start: page, end: page + pageBytes });
  }
  return parts;
}

/** @returns how many bytes were read: none where nothing lies behind the address */
function readAt(memory: number, at: number, into: Buffer): number {
  try {
    return readSync(memory, into, 0, into.byteLength, at);
  } catch {
    return 0;
  }
}
