/** Bytes to look for, and the number of the value that they are a form or a piece of. */
export interface Pattern {
  readonly bytes: Uint8Array;
  readonly value: number;
}

/** Shorter ones stand everywhere: looking for them would say nothing. */
export const fewestBytes = 6;

const tableBits = 20;
const slotShift = 32 - tableBits;
const none = -1;

/**
 * Looks for many patterns in one walk over the bytes. Each pattern stands in a table by a hash of its first six bytes;
 * where the bytes walked over have that hash, the whole pattern is compared.
 */
export class ByteSearch {
  readonly #patterns: readonly Pattern[];
  /** The first pattern of each hash, and the next one of the same hash after each pattern. */
  readonly #first = new Int32Array(1 << tableBits).fill(none);
  readonly #next: Int32Array;
  /** The whole hash of each pattern, of which its slot in the table is the upper part. */
  readonly #hashes: Int32Array;
  /** One bit for each hash that has a pattern: small enough to stay near the processor, which asks it at every byte. */
  readonly #taken = new Uint8Array((1 << tableBits) / 8);
  /** Bytes of the longest pattern: pieces of a file must overlap by one less. */
  readonly longest: number;

  /** @param patterns of `fewestBytes` bytes and more */
  constructor(patterns: readonly Pattern[]) {
    this.#patterns = patterns;
    this.#next = new Int32Array(patterns.length).fill(none);
    this.#hashes = new Int32Array(patterns.length);
    let longest = fewestBytes;
    for (const [at, { bytes }] of patterns.entries()) {
      longest = Math.max(longest, bytes.byteLength);
      const hash = hashAt(wordAt(bytes, 0), bytes[4] ?? 0, bytes[5] ?? 0);
      const slot = hash >>> slotShift;
      this.#hashes[at] = hash;
      this.#next[at] = this.#first[slot] ?? none;
      this.#first[slot] = at;
      this.#taken[slot >>> 3] = (this.#taken[slot >>> 3] ?? 0) | (1 << (slot & 7));
    }
    this.longest = longest;
  }

  /** Adds the places in the list of the patterns that stand in these bytes. */
  find(bytes: Uint8Array, found: Set<number>): void {
    const taken = this.#taken;
    const end = bytes.byteLength - fewestBytes;
    // Three of its bytes: each step of the walk takes in the fourth.
    let word = wordAt(bytes, 0) << 8;
    for (let at = 0; at <= end; at += 1) {
      word = (word >>> 8) | ((bytes[at + 3] as number) << 24);
      const hash = hashAt(word, bytes[at + 4] as number, bytes[at + 5] as number);
      const slot = hash >>> slotShift;
      if (((taken[slot >>> 3] as number) & (1 << (slot & 7))) !== 0) this.#compare(hash, bytes, at, found);
    }
  }

  #compare(hash: number, bytes: Uint8Array, at: number, found: Set<number>): void {
    for (let each = this.#first[hash >>> slotShift] ?? none; each !== none; each = this.#next[each] ?? none) {
      if (this.#hashes[each] !== hash) continue;
      const pattern = this.#patterns[each];
      if (pattern !== undefined && !found.has(each) && standsAt(bytes, at, pattern.bytes)) found.add(each);
    }
  }
}

function standsAt(bytes: Uint8Array, at: number, wanted: Uint8Array): boolean {
  if (at + wanted.byteLength > bytes.byteLength) return false;
  for (let offset = 0; offset < wanted.byteLength; offset += 1) {
    if (bytes[at + offset] !== wanted[offset]) return false;
  }
  return true;
}

/** Four bytes from a place on, the first one lowest. */
function wordAt(bytes: Uint8Array, at: number): number {
  const byte = (offset: number) => bytes[at + offset] ?? 0;
  return byte(0) | (byte(1) << 8) | (byte(2) << 16) | (byte(3) << 24);
}

/** Multiplying by large odd numbers spreads what texts and numbers have in common over the upper bits, which are used. */
function hashAt(word: number, fifth: number, sixth: number): number {
  return Math.imul(word, 0x9e3779b1) ^ Math.imul(fifth | (sixth << 8), 0x85ebca6b);
}
