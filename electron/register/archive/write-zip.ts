import { crc32, deflateRawSync } from "node:zlib";
import type { ByteSink } from "../byte-source.ts";

/**
 * Writes a zip (APPNOTE 6.3): each entry deflated (tiny ones stored), its sizes before its bytes, UTF-8 names, no clock
 * (every entry says 1 January 1980). Beyond 65,534 entries or 4 GB it goes on as ZIP64. ARCHIVE.md says which libraries
 * were tried in its place.
 */
export class ZipWriter {
  readonly #sink: ByteSink;
  readonly #directory: Uint8Array[] = [];
  #offset = 0;

  constructor(sink: ByteSink) {
    this.#sink = sink;
  }

  /** Each entry is held in memory once; a recording is at most 1 GB. */
  add(name: string, bytes: Uint8Array): void {
    const nameBytes = Buffer.from(name);
    const isTiny = bytes.byteLength <= tinyBytes;
    const packed = isTiny ? bytes : deflateRawSync(bytes);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(isFar(this.#offset) ? zip64Version : plainVersion, 0);
    common.writeUInt16LE(utf8Names, 2);
    common.writeUInt16LE(isTiny ? stored : deflate, 4);
    common.writeUInt16LE(firstOfJanuary1980, 8);
    common.writeUInt32LE(crc32(bytes), 10);
    common.writeUInt32LE(packed.byteLength, 14);
    common.writeUInt32LE(bytes.byteLength, 18);
    common.writeUInt16LE(nameBytes.byteLength, 22);
    const offset = this.#offset;
    this.#write(Buffer.concat([signature(localHeader), common, nameBytes, packed]));
    // In memory of its own: a small buffer would keep the 64 KB alive that it shares with what was packed beside it.
    this.#directory.push(new Uint8Array(directoryEntry(common, nameBytes, offset)));
  }

  /**
   * @param comment ASCII; stands at the very end of the file
   * @param closing the last of the comment, asked for when everything before it has been written
   */
  finish(comment: string, closing: { readonly length: number; readonly text: () => string }): void {
    const start = this.#offset;
    for (const entry of this.#directory) this.#write(entry);
    const size = this.#offset - start;
    const entries = this.#directory.length;
    if (entries >= most16 || isFar(start) || isFar(size)) this.#write(zip64End(this.#offset, entries, size, start));
    const end = Buffer.alloc(18);
    end.writeUInt16LE(Math.min(entries, most16), 4);
    end.writeUInt16LE(Math.min(entries, most16), 6);
    end.writeUInt32LE(Math.min(size, most32), 8);
    end.writeUInt32LE(Math.min(start, most32), 12);
    end.writeUInt16LE(comment.length + closing.length, 16);
    this.#write(Buffer.concat([signature(endOfDirectory), end]));
    this.#write(Buffer.from(comment, "ascii"));
    this.#write(Buffer.from(closing.text(), "ascii"));
  }

  #write(bytes: Uint8Array): void {
    this.#sink.write(bytes);
    this.#offset += bytes.byteLength;
  }
}

/** Signatures and values of the format that reading needs too. */
export const localHeader = 0x04034b50;
export const directoryHeader = 0x02014b50;
export const endOfDirectory = 0x06054b50;
export const zip64EndOfDirectory = 0x06064b50;
export const zip64Locator = 0x07064b50;
export const most16 = 0xffff;
export const most32 = 0xffff_ffff;
export const stored = 0;
export const deflate = 8;
export const zip64Field = 1;

/** Deflating so little makes it no smaller. */
const tinyBytes = 32;
const plainVersion = 20;
const zip64Version = 45;
const utf8Names = 0x0800;
const firstOfJanuary1980 = 0x21;

function isFar(offset: number): boolean {
  return offset >= most32;
}

function signature(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}

function directoryEntry(common: Buffer, name: Buffer, offset: number): Uint8Array {
  const far = isFar(offset);
  const extra = Buffer.alloc(far ? 12 : 0);
  if (far) {
    extra.writeUInt16LE(zip64Field, 0);
    extra.writeUInt16LE(8, 2);
    extra.writeBigUInt64LE(BigInt(offset), 4);
  }
  const madeBy = Buffer.alloc(2);
  madeBy.writeUInt16LE(far ? zip64Version : plainVersion);
  const fixed = Buffer.from(common);
  fixed.writeUInt16LE(extra.byteLength, 24);
  const rest = Buffer.alloc(14);
  rest.writeUInt32LE(far ? most32 : offset, 10);
  return Buffer.concat([signature(directoryHeader), madeBy, fixed, rest, name, extra]);
}

function zip64End(offset: number, entries: number, size: number, start: number): Uint8Array {
  const record = Buffer.alloc(52);
  record.writeBigUInt64LE(44n, 0);
  record.writeUInt16LE(zip64Version, 8);
  record.writeUInt16LE(zip64Version, 10);
  record.writeBigUInt64LE(BigInt(entries), 20);
  record.writeBigUInt64LE(BigInt(entries), 28);
  record.writeBigUInt64LE(BigInt(size), 36);
  record.writeBigUInt64LE(BigInt(start), 44);
  const locator = Buffer.alloc(16);
  locator.writeBigUInt64LE(BigInt(offset), 4);
  locator.writeUInt32LE(1, 12);
  return Buffer.concat([signature(zip64EndOfDirectory), record, signature(zip64Locator), locator]);
}
