import fc from "fast-check";

/** Where property tests begin; COUNTERPOISE_SEED names another place, so that other cases are tried. */
export const propertySeed = readSeed(process.env.COUNTERPOISE_SEED);

// Run before each test file. Every property is tried on the same cases in every run; one that fails prints its own seed
// and path besides.
fc.configureGlobal({ seed: propertySeed });

function readSeed(text = "20261014"): number {
  const seed = Number(text);
  if (!Number.isInteger(seed)) throw new Error(`COUNTERPOISE_SEED is a whole number, not "${text}".`);
  return seed;
}
