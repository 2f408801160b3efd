/** Blocks of each size that are taken at once: more of them than were seen to lie free. */
const swept: readonly (readonly [bytes: number, blocks: number])[] = [
  [65_536, 128],
  [16_384, 128],
  [4096, 512],
  [1024, 1024],
  [512, 2048],
  ...Array.from({ length: 16 }, (_, index) => [16 * (index + 1), 2048] as const),
];

/**
 * Overwrites memory that this thread has given back: the parser of requests and the ciphers of the system leave copies
 * there that nothing else can reach. What the allocator does not hand out again stays; memory-after-locking.md has what
 * that was.
 */
export function overwriteFreed(): void {
  const held: Uint8Array[] = [];
  for (const [bytes, blocks] of swept) {
    for (let block = 0; block < blocks; block += 1) held.push(Buffer.allocUnsafeSlow(bytes).fill(0));
  }
}
