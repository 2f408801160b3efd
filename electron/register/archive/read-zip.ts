import { createHash } from "node:crypto";
import { inflateRawSync } from "node:zlib";
import { type Entry, fromRandomAccessReaderPromise, type ZipFile } from "yauzl";
import { RequestRefused } from "../../refusals/request-refused.ts";
import type { ByteSource } from "../byte-source.ts";
import { archiveLimits } from "./archive-limits.ts";
import { SourceReader } from "./source-reader.ts";

/** The entries of a zip, read one at a time. */
export interface ZipReading {
  /** What stands at the very end of the file. */
  readonly comment: string;
  readonly names: readonly string[];
  /** How many bytes it says an entry holds; undefined where there is none. */
  sizeOf(name: string): number | undefined;
  /**
   * @param mostBytes an entry that says it holds more is not unpacked
   * @throws RequestRefused when there is no such entry or it cannot be unpacked
   */
  read(name: string, mostBytes?: number): Uint8Array;
  /** SHA-256 of an entry in hexadecimal, unpacked piece by piece. @throws RequestRefused like `read` */
  sha256Of(name: string): Promise<string>;
}

/** Where the packed bytes of an entry lie. */
interface Place {
  readonly header: number;
  readonly start: number;
  readonly packed: number;
  readonly size: number;
  readonly isDeflated: boolean;
}

const stored = 0;
const deflate = 8;
const directoryEntryBytes = 46;

/**
 * Opens a zip: its list of contents and where each entry lies, against the limits of an archive, before anything is
 * unpacked. Entries can then be read at once, within a transaction.
 * @throws RequestRefused when the bytes are no zip, its list cannot be read, or it is beyond a limit
 */
export async function readZip(source: ByteSource): Promise<ZipReading> {
  const zip = await openZip(source);
  const places = await readPlaces(zip, source.size);
  const placeOf = (name: string) => {
    const place = places.get(name);
    if (place === undefined) throw new RequestRefused(`The archive lacks ${name}; nothing of it was used.`);
    return place;
  };
  return {
    // Bytes, since its strings are not decoded.
    comment: (zip.comment as unknown as Buffer).toString("latin1"),
    names: [...places.keys()],
    sizeOf: (name) => places.get(name)?.size,
    read: (name, mostBytes = archiveLimits.entryBytes) => {
      const place = placeOf(name);
      if (place.size > mostBytes) throw damagedEntry(name);
      return unpack(source, name, place);
    },
    sha256Of: (name) => streamedSum(zip, name, placeOf(name)),
  };
}

async function openZip(source: ByteSource): Promise<ZipFile> {
  let zip: ZipFile;
  try {
    // Names as bytes: decoded here, because the reader would make other names of some.
    zip = await fromRandomAccessReaderPromise(new SourceReader(source), source.size, {
      autoClose: false,
      decodeStrings: false,
    });
  } catch (error) {
    if (error instanceof RequestRefused) throw error;
    const isZip = error instanceof Error && !/End of central directory|comment length/.test(error.message);
    if (isZip) throw damaged();
    throw new RequestRefused("The file is no archive: it does not end as a zip does.");
  }
  if (zip.entryCount > archiveLimits.entries) {
    throw tooMuch(`it holds more than ${archiveLimits.entries.toLocaleString("en-US")} files`);
  }
  return zip;
}

async function readPlaces(zip: ZipFile, fileBytes: number): Promise<ReadonlyMap<string, Place>> {
  const places = new Map<string, Place>();
  let directoryBytes = 0;
  let total = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      directoryBytes += directoryEntryBytes + entry.fileNameLength + entry.extraFieldLength + entry.fileCommentLength;
      total += entry.uncompressedSize;
      checkLimits(entry, directoryBytes, total, fileBytes);
      const { fileDataStart: start } = await zip.readLocalFileHeaderPromise(entry, { minimal: true });
      places.set(entry.fileNameRaw.toString(), {
        header: entry.relativeOffsetOfLocalHeader,
        start,
        packed: entry.compressedSize,
        size: entry.uncompressedSize,
        isDeflated: entry.compressionMethod === deflate,
      });
    }
  } catch (error) {
    throw error instanceof RequestRefused ? error : damaged();
  }
  if (places.size !== zip.entryCount || overlap([...places.values()])) throw damaged();
  return places;
}

function checkLimits(entry: Entry, directoryBytes: number, total: number, fileBytes: number): void {
  const { nameBytes, entryBytes, totalBytes, growth, grownFree } = archiveLimits;
  if (directoryBytes > archiveLimits.directoryBytes) throw tooMuch("its list of contents is larger than 80 MB");
  if (entry.fileNameLength > nameBytes) throw tooMuch(`a name in it is longer than ${nameBytes} bytes`);
  if (entry.isEncrypted() || ![stored, deflate].includes(entry.compressionMethod)) throw damaged();
  if (entry.uncompressedSize > entryBytes) throw tooMuch("a file in it would be larger than 1 GB");
  if (total > totalBytes) throw tooMuch("unpacked it would be larger than 256 GB");
  if (total > grownFree + growth * fileBytes) {
    throw tooMuch(`unpacked it would be more than ${growth} times as large, which no recordings are`);
  }
}

/** Entries that share bytes could make a small file unpack to anything. */
function overlap(places: readonly Place[]): boolean {
  const inOrder = places.toSorted((one, other) => one.header - other.header);
  return inOrder.some(({ start, packed }, index) => start + packed > (inOrder[index + 1]?.header ?? Infinity));
}

function unpack(source: ByteSource, name: string, { start, packed, size, isDeflated }: Place): Uint8Array {
  const bytes = source.read(start, packed);
  if (bytes.byteLength !== packed) throw damagedEntry(name);
  if (!isDeflated) return bytes;
  try {
    // Never more than was announced: a small file cannot fill the memory. And in one piece, which is not joined from others.
    const unpacked = inflateRawSync(bytes, { maxOutputLength: Math.max(1, size), chunkSize: Math.max(64, size + 1) });
    if (unpacked.byteLength === size) return unpacked;
  } catch (error) {
    if (!(error instanceof Error) || !("code" in error)) throw error;
  }
  throw damagedEntry(name);
}

async function streamedSum(zip: ZipFile, name: string, place: Place): Promise<string> {
  const sum = createHash("sha256");
  try {
    const pieces = await new Promise<AsyncIterable<Uint8Array>>((resolve, reject) => {
      const { start, packed, size, isDeflated } = place;
      zip.openReadStreamLowLevel(start, packed, 0, packed, isDeflated, size, (error, stream) =>
        error === null ? resolve(stream) : reject(error),
      );
    });
    for await (const piece of pieces) sum.update(piece);
  } catch (error) {
    throw error instanceof RequestRefused ? error : damagedEntry(name);
  }
  return sum.digest("hex");
}

function tooMuch(why: string): RequestRefused {
  return new RequestRefused(`The archive was not used: ${why}. Have it written again, one athlete at a time.`);
}

function damaged(): RequestRefused {
  return new RequestRefused("The archive's list of contents is damaged; nothing of it was used.");
}

function damagedEntry(name: string): RequestRefused {
  return new RequestRefused(`${name} is damaged in the archive; nothing of it was used.`);
}
