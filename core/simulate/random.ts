/** A seeded source of random numbers; the same seed gives the same numbers on every machine. */
export interface Random {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Uniform on [low, high). */
  between(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
  /** One of the given values, each equally likely. */
  pick<Value>(values: readonly Value[]): Value;
}

/**
 * Makes a generator from a 32-bit seed: a Weyl sequence mixed by two multiplications (the public-domain "mulberry32"
 * construction), normals by Box and Muller (1958). Good enough for noise and drawing options, not for secrets.
 */
export function createRandom(seed: number): Random {
  // One mixing of the seed first, so that neighbouring seeds do not start with neighbouring states.
  let state = (Math.imul((seed | 0) ^ 0x9e3779b9, 0x85ebca6b) ^ (seed >>> 3)) >>> 0;
  let spare: number | undefined;

  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };

  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };

  return {
    uniform,
    normal,
    between: (low, high) => low + (high - low) * uniform(),
    pick: (values) => {
      const value = values[Math.floor(uniform() * values.length)];
      if (value === undefined) throw new RangeError("There is nothing to pick from.");
      return value;
    },
  };
}
