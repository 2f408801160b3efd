import { closeSync, fstatSync, openSync, readSync } from "node:fs";

/** Bytes that can be read from any place. */
export interface ByteSource {
  readonly size: number;
  /** Exactly these bytes, or fewer at the end. */
  read(offset: number, length: number): Uint8Array;
  close(): void;
}

/** Where bytes go one piece after another. */
export interface ByteSink {
  write(bytes: Uint8Array): void;
  /** Everything has been written. */
  end(): void;
}

/** A file as it lies on the disk. */
export function openFile(path: string): ByteSource {
  const file = openSync(path, "r");
  const { size } = fstatSync(file);
  return {
    size,
    read: (offset, length) => {
      // A damaged list of contents may point anywhere.
      const isWithin = offset >= 0 && offset < size && length > 0;
      const bytes = Buffer.alloc(isWithin ? Math.min(length, size - offset) : 0);
      let filled = 0;
      while (filled < bytes.byteLength) {
        const count = readSync(file, bytes, filled, bytes.byteLength - filled, offset + filled);
        if (count === 0) break;
        filled += count;
      }
      return bytes.subarray(0, filled);
    },
    close: () => closeSync(file),
  };
}
