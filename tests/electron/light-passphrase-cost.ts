/** Stands for electron/register/passphrase-cost.ts in tests of the host, which make hundreds of keys: the least that is read. */
export const passphraseCost = { N: 1024, r: 8, p: 1 } as const;
