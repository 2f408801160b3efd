import type { Words } from "./words.ts";

/** What the first block of a C3D file states. Counts are as written; nothing here is believed alone. */
export interface C3dHeader {
  readonly points: number;
  /** Analog values in one frame, all channels and samples together (word 3). */
  readonly analogWords: number;
  readonly firstFrame: number;
  readonly lastFrame: number;
  /** Negative: the data are floating-point numbers; positive: 16-bit integers. */
  readonly scale: number;
  readonly dataStartBlock: number;
  /** Analog samples of one channel in one frame (word 10). */
  readonly samplesPerFrame: number;
  readonly frameRateHz: number;
}

/** Bytes of the header that are read. No setting: the format says so. */
export const headerBytes = 24;

export function readHeader(words: Words): C3dHeader {
  return {
    points: words.unsigned16(2),
    analogWords: words.unsigned16(4),
    firstFrame: words.unsigned16(6),
    lastFrame: words.unsigned16(8),
    scale: words.float32(12),
    dataStartBlock: words.unsigned16(16),
    samplesPerFrame: words.unsigned16(18),
    frameRateHz: words.float32(20),
  };
}
