/** Bytes between the words that are looked at; memory is read in words of four bytes. */
const stepBytes = 8;
const wordBytes = 4;
/** The shortest run of bytes that holds a whole word at each step, wherever it begins. */
export const fewestPatternBytes = stepBytes + wordBytes - 1;

interface Place {
  readonly name: string;
  readonly bytes: Buffer;
  /** Where in the pattern the word stands. */
  readonly offset: number;
}

/**
 * Counts many patterns in one pass over bytes: wherever a pattern begins, one of its first words falls on a step, so one
 * look each eight bytes at a small table of words rules nearly everything out.
 */
export class Patterns {
  readonly counts: Map<string, number>;
  readonly longest: number;
  /** The words of all patterns; most of memory is ruled out by the first table, the rest by the second. */
  readonly #mayBe = new Uint8Array(65_536);
  readonly #places = new Map<number, Place[]>();

  /** @throws Error for a pattern shorter than fewestPatternBytes */
  constructor(patterns: ReadonlyMap<string, Uint8Array>) {
    this.counts = new Map([...patterns.keys()].map((name) => [name, 0]));
    this.longest = Math.max(...[...patterns.values()].map(({ byteLength }) => byteLength));
    for (const [name, pattern] of patterns) {
      if (pattern.byteLength < fewestPatternBytes) throw new Error(`The pattern ${name} is too short.`);
      const bytes = Buffer.from(pattern);
      for (let offset = 0; offset < stepBytes; offset += 1) {
        const word = bytes.readInt32LE(offset);
        this.#mayBe[short(word)] = 1;
        this.#places.set(word, [...(this.#places.get(word) ?? []), { name, bytes, offset }]);
      }
    }
  }

  /**
   * Counts those that begin in the first `limit` bytes.
   * @param piece at the beginning of its buffer, or at a multiple of four bytes from there
   */
  search(piece: Buffer, limit: number): void {
    const words = new Int32Array(piece.buffer, piece.byteOffset, Math.floor(piece.byteLength / wordBytes));
    const mayBe = this.#mayBe;
    const step = stepBytes / wordBytes;
    for (let at = 0; at < words.length; at += step) {
      const word = words[at] ?? 0;
      if (mayBe[short(word)] === 1) this.#compare(piece, at * wordBytes, word, limit);
    }
  }

  #compare(piece: Buffer, at: number, word: number, limit: number): void {
    for (const { name, bytes, offset } of this.#places.get(word) ?? []) {
      const start = at - offset;
      const isWithin = start >= 0 && start < limit && start + bytes.byteLength <= piece.byteLength;
      if (isWithin && bytes.equals(piece.subarray(start, start + bytes.byteLength)))
        this.counts.set(name, (this.counts.get(name) ?? 0) + 1);
    }
  }
}

function short(word: number): number {
  return (word ^ (word >>> 16)) & 0xffff;
}
