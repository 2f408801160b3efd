import { Readable } from "node:stream";
import { RandomAccessReader } from "yauzl";
import type { ByteSource } from "../byte-source.ts";

const pieceBytes = 1024 * 1024;

/** Lends a source of bytes, sealed or not, to the reader of zips. Whoever opened the source closes it. */
export class SourceReader extends RandomAccessReader {
  readonly #source: ByteSource;

  constructor(source: ByteSource) {
    super();
    this.#source = source;
  }

  override read(
    buffer: Buffer,
    offset: number,
    length: number,
    position: number,
    callback: (error: Error | null, bytesRead?: number) => void,
  ): void {
    let bytes: Uint8Array;
    try {
      bytes = this.#source.read(position, length);
    } catch (error) {
      callback(error as Error);
      return;
    }
    buffer.set(bytes, offset);
    callback(null, bytes.byteLength);
  }

  override _readStreamForRange(start: number, end: number): Readable {
    const source = this.#source;
    const pieces = function* () {
      for (let at = start; at < end; at += pieceBytes) yield source.read(at, Math.min(pieceBytes, end - at));
    };
    return Readable.from(pieces());
  }

  override close(callback: (error: Error | null) => void): void {
    callback(null);
  }
}
