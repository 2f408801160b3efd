/**
 * Cost of scrypt: 2^16 rounds of 8 blocks take 64 MB and about a fifth of a second, so that guessing is dear and a
 * clinic's laptop is not held up.
 */
export const passphraseCost = { N: 65_536, r: 8, p: 1 } as const;
