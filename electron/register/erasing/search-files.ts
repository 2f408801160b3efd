import { closeSync, openSync, readSync } from "node:fs";
import { ByteSearch, type Pattern } from "./byte-search.ts";

/** Read at a time; what stands across two pieces is found, because each begins with the end of the one before. */
const pieceBytes = 4 * 1024 * 1024;

/** Which patterns stand in one file or its name. */
export interface FileFindings {
  readonly bytes: number;
  /** Places of the patterns in their list. */
  readonly found: ReadonlySet<number>;
}

/** Looks for patterns in files, byte by byte, in memory of a fixed size. */
export class FileSearch {
  readonly #search: ByteSearch;
  readonly #buffer: Buffer;

  constructor(patterns: readonly Pattern[]) {
    this.#search = new ByteSearch(patterns);
    this.#buffer = Buffer.allocUnsafe(pieceBytes + this.#search.longest);
  }

  /** @throws the operating system's error where it cannot be read */
  inFile(path: string): FileFindings {
    const found = new Set<number>();
    this.#search.find(Buffer.from(path), found);
    const file = openSync(path, "r");
    try {
      let bytes = 0;
      let kept = 0;
      while (true) {
        const count = readSync(file, this.#buffer, kept, this.#buffer.byteLength - kept, bytes);
        if (count === 0) return { bytes, found };
        bytes += count;
        const filled = kept + count;
        this.#search.find(this.#buffer.subarray(0, filled), found);
        kept = Math.min(filled, this.#search.longest - 1);
        this.#buffer.copy(this.#buffer, 0, filled - kept, filled);
      }
    } finally {
      closeSync(file);
    }
  }

  /** What stands in bytes that are in memory. */
  inBytes(bytes: Uint8Array, found: Set<number>): void {
    this.#search.find(bytes, found);
  }
}
