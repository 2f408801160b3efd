import { expect, test } from "vitest";
import { derivationSchema, deriveKey, newDerivation, passphraseBytes } from "../../electron/register/passphrase-key.ts";
import { passphraseCost as lightCost } from "../electron/light-passphrase-cost.ts";

test("a key takes 2^17 rounds of scrypt with 8 blocks in the program, whatever stands for it in tests of the host", () => {
  const { salt, ...derivation } = newDerivation();
  // RFC 7914 has the parameters; their size is our choice: 128 · N · r = 128 MB for each guess.
  expect(derivation).toEqual({ method: "scrypt", N: 2 ** 17, r: 8, p: 1 });
  expect(deriveKey(passphraseBytes("nine grey geese"), { ...derivation, salt })).toHaveLength(32);
  // What stands for it differs in nothing but the number of rounds, and is a cost that registers may have.
  expect(derivationSchema.parse({ method: "scrypt", ...lightCost, salt })).toEqual({ ...derivation, salt, N: 1024 });
});
