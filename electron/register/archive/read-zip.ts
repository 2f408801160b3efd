import { inflateRawSync } from "node:zlib";
import { RequestRefused } from "../../request-refused.ts";
import type { ByteSource } from "../byte-source.ts";
import {
  deflate,
  directoryHeader,
  endOfDirectory,
  localHeader,
  most16,
  most32,
  stored,
  zip64EndOfDirectory,
  zip64Field,
  zip64Locator,
} from "./write-zip.ts";

/** The entries of a zip, read one at a time. */
export interface ZipReading {
  /** What stands at the very end of the file. */
  readonly comment: string;
  readonly names: readonly string[];
  /**
   * @param mostBytes an entry that says it holds more is not unpacked
   * @throws RequestRefused when there is no such entry or it cannot be unpacked
   */
  read(name: string, mostBytes?: number): Uint8Array;
}

interface Entry {
  readonly offset: number;
  readonly packed: number;
  readonly size: number;
  readonly method: number;
}

/** No entry of ours is larger: recordings are read up to 1 GB. */
const mostEntryBytes = 1024 * 1024 * 1024;

/** @throws RequestRefused when the bytes are no zip or its directory cannot be read */
export function readZip(source: ByteSource): ZipReading {
  const end = findEnd(source);
  const entries = readDirectory(source, end);
  return {
    comment: end.comment,
    names: [...entries.keys()],
    read: (name, mostBytes = mostEntryBytes) => {
      const entry = entries.get(name);
      if (entry === undefined) throw new RequestRefused(`The archive lacks ${name}; nothing of it was used.`);
      if (entry.size > mostBytes) throw damagedEntry(name);
      return unpack(source, name, entry);
    },
  };
}

interface End {
  readonly entries: number;
  readonly start: number;
  readonly size: number;
  readonly comment: string;
}

function findEnd(source: ByteSource): End {
  const fixed = 22;
  const tailStart = Math.max(0, source.size - fixed - most16);
  const tail = Buffer.from(source.read(tailStart, source.size - tailStart));
  for (let at = tail.byteLength - fixed; at >= 0; at -= 1) {
    if (tail.readUInt32LE(at) !== endOfDirectory) continue;
    if (at + fixed + tail.readUInt16LE(at + 20) !== tail.byteLength) continue;
    const comment = tail.subarray(at + fixed).toString("latin1");
    const near = {
      entries: tail.readUInt16LE(at + 10),
      size: tail.readUInt32LE(at + 12),
      start: tail.readUInt32LE(at + 16),
    };
    const isFar = near.entries === most16 || near.size === most32 || near.start === most32;
    return { comment, ...(isFar ? readFarEnd(source, tailStart + at) : near) };
  }
  throw new RequestRefused("The file is no archive: it does not end as a zip does.");
}

function readFarEnd(source: ByteSource, endOffset: number): Omit<End, "comment"> {
  const locator = Buffer.from(source.read(endOffset - 20, 20));
  if (locator.byteLength < 20 || locator.readUInt32LE(0) !== zip64Locator) throw damaged();
  const record = Buffer.from(source.read(Number(locator.readBigUInt64LE(8)), 56));
  if (record.byteLength < 56 || record.readUInt32LE(0) !== zip64EndOfDirectory) throw damaged();
  return {
    entries: Number(record.readBigUInt64LE(32)),
    size: Number(record.readBigUInt64LE(40)),
    start: Number(record.readBigUInt64LE(48)),
  };
}

function readDirectory(source: ByteSource, { entries: count, start, size }: End): ReadonlyMap<string, Entry> {
  if (start + size > source.size) throw damaged();
  const bytes = Buffer.from(source.read(start, size));
  const entries = new Map<string, Entry>();
  const fixed = 46;
  let at = 0;
  for (let index = 0; index < count; index += 1) {
    if (at + fixed > bytes.byteLength || bytes.readUInt32LE(at) !== directoryHeader) throw damaged();
    const nameEnd = at + fixed + bytes.readUInt16LE(at + 28);
    const extraEnd = nameEnd + bytes.readUInt16LE(at + 30);
    const near = bytes.readUInt32LE(at + 42);
    const name = bytes.subarray(at + fixed, nameEnd).toString();
    entries.set(name, {
      method: bytes.readUInt16LE(at + 10),
      packed: bytes.readUInt32LE(at + 20),
      size: bytes.readUInt32LE(at + 24),
      offset: near === most32 ? farOffset(bytes.subarray(nameEnd, extraEnd)) : near,
    });
    at = extraEnd + bytes.readUInt16LE(at + 32);
  }
  // Entries that share bytes could make a small file unpack to anything.
  const packed = [...entries.values()].reduce((sum, entry) => sum + entry.packed, 0);
  if (entries.size !== count || packed > source.size) throw damaged();
  return entries;
}

function farOffset(extra: Buffer): number {
  if (extra.byteLength < 12 || extra.readUInt16LE(0) !== zip64Field) throw damaged();
  return Number(extra.readBigUInt64LE(4));
}

function unpack(source: ByteSource, name: string, { offset, packed, size, method }: Entry): Uint8Array {
  const fixed = 30;
  const header = Buffer.from(source.read(offset, fixed));
  const isSound = header.byteLength === fixed && header.readUInt32LE(0) === localHeader;
  const isKnown = method === deflate || (method === stored && packed === size);
  if (!isSound || !isKnown || size > mostEntryBytes || packed > source.size) throw damagedEntry(name);
  const start = offset + fixed + header.readUInt16LE(26) + header.readUInt16LE(28);
  const bytes = source.read(start, packed);
  if (method === stored && bytes.byteLength === size) return bytes;
  try {
    // Never more than was announced: a small file cannot fill the memory.
    const unpacked = inflateRawSync(bytes, { maxOutputLength: Math.max(1, size) });
    if (unpacked.byteLength === size) return unpacked;
  } catch (error) {
    if (!(error instanceof Error) || !("code" in error)) throw error;
  }
  throw damagedEntry(name);
}

function damaged(): RequestRefused {
  return new RequestRefused("The archive's list of contents is damaged; nothing of it was used.");
}

function damagedEntry(name: string): RequestRefused {
  return new RequestRefused(`${name} is damaged in the archive; nothing of it was used.`);
}
