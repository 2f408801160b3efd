/**
 * Cost of scrypt: 2^17 rounds of 8 blocks take 128 MB and about two fifths of a second, so that guessing is dear and a
 * clinic's laptop is not held up. What a register was protected with is kept beside its key and raised to this when its
 * passphrase is next changed.
 */
export const passphraseCost = { N: 131_072, r: 8, p: 1 } as const;
