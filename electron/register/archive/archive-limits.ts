import type { JsonLimits } from "../../../core/bytes/json-bounds.ts";

const megabyte = 1024 * 1024;

/**
 * What an archive may hold at most; looked at before anything of it is unpacked. A register of 2,000 athletes, 20,000
 * sessions and 200,000 recordings (ARCHIVE.md has what its archive measures) stays below each of them.
 */
export const archiveLimits = {
  /** Files within the zip. */
  entries: 250_000,
  /** Bytes of one name: the longest path that operating systems take, within its session's folder. */
  nameBytes: 8192,
  /** Bytes of the zip's own list of contents: 250,000 names of 120 bytes and what stands beside them, twice over. */
  directoryBytes: 80 * megabyte,
  /** Bytes of one file unpacked: no recording is read that is larger. */
  entryBytes: 1024 * megabyte,
  /** Bytes of all of them unpacked. */
  totalBytes: 256 * 1024 * megabyte,
  /** How many times larger than the file all of it may be unpacked; text of numbers becomes three to ten times larger. */
  growth: 100,
  /** Unpacked bytes that are allowed however small the file is. */
  grownFree: 16 * megabyte,
  /** Files beyond this are read once in pieces, to see that they are what the manifest says, before one is unpacked whole. */
  readInPieces: 32 * megabyte,
} as const;

/** The manifest: for 200,000 recordings 52 MB, each of four elements. */
export const manifestLimits: JsonLimits = {
  bytes: 80 * megabyte,
  depth: 8,
  elements: 1_200_000,
  textBytes: archiveLimits.nameBytes * 6,
};

/** The records of one kind, read one at a time: 200,000 recordings take 80 MB. */
export const recordsByteLimit = 128 * megabyte;

/** One record; a session says what its `session.json` may say, and what was answered since. */
export const recordLimits: JsonLimits = { bytes: 16 * megabyte, depth: 40, elements: 300_000, textBytes: 4 * megabyte };
