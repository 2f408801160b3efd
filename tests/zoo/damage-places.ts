import fc from "fast-check";

/** One byte with some of its bits turned over. */
export interface Flip {
  readonly place: number;
  /** 1 to 255. */
  readonly mask: number;
}

/** A fixed number for each name, so that every file is hurt at places of its own and always at the same ones. */
function seedOf(name: string): number {
  let hash = 0x811c9dc5;
  for (const character of name) hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193);
  return hash >>> 1;
}

/** One bit, or several at once, of a byte before `end`. */
export function flipsOf(name: string, count: number, end: number): readonly Flip[] {
  if (end === 0) return [];
  const mask = fc.oneof(
    fc.nat({ max: 7 }).map((bit) => 1 << bit),
    fc.integer({ min: 1, max: 255 }),
  );
  const flip = fc.record({ place: fc.nat({ max: end - 1 }), mask });
  return fc.sample(flip, { numRuns: count, seed: seedOf(`${name} ${end}`) });
}

/** Lengths to cut a file to, evenly spread from a beginning of its own. */
export function cutsOf(name: string, count: number, length: number): readonly number[] {
  const phase = (seedOf(name) % 1000) / 1000;
  return Array.from({ length: count }, (_, index) => Math.floor(((index + phase) * length) / count));
}

export function flipped(bytes: Uint8Array, { place, mask }: Flip): Uint8Array {
  const damaged = bytes.slice();
  damaged[place] = damaged[place]! ^ mask;
  return damaged;
}
