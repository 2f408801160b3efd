import { closeSync, openSync, readSync } from "node:fs";

const pieceBytes = 256 * 1024;

/**
 * The bytes of a file; of one that is larger than the limit one byte more than it allows, by which its reader refuses
 * it, whatever its length is said to be.
 * @throws the operating system's error where it cannot be read
 */
export function readUpTo(path: string, byteLimit: number): Uint8Array {
  const file = openSync(path, "r");
  try {
    const pieces: Uint8Array[] = [];
    let length = 0;
    while (length <= byteLimit) {
      const piece = Buffer.alloc(Math.min(pieceBytes, byteLimit + 1 - length));
      const count = readSync(file, piece);
      if (count === 0) break;
      pieces.push(piece.subarray(0, count));
      length += count;
    }
    return Buffer.concat(pieces);
  } finally {
    closeSync(file);
  }
}
