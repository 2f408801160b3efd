import { expect, test } from "vitest";
import { passphraseBytes } from "../../../../electron/register/passphrase-bytes.ts";
import { requireStrength, weaknessOf } from "../../../../electron/register/strength/passphrase-strength.ts";
import { otherStrongPassphrase, strongPassphrase } from "../../strong-passphrase.ts";

const weigh = (text: string, known: readonly string[] = []) => weaknessOf(passphraseBytes(text), known);

test.each([
  ["12345678", "is among those that are tried first"],
  ["        ", "is made of blanks alone"],
  ["\u00a0\u2003 \t\u3000    ", "is made of blanks alone"],
  ["ridge", "is shorter than 8 letters"],
  ["password1", "is among those that are tried first"],
  ["P@ssw0rd", "is among those that are tried first"],
  ["zxcvbnm,./qwe", "follows keys that lie side by side"],
  ["aaaaaaaaaaaaaaaaaaaaaaaa", "says one thing again and again"],
  ["xkqxkqxkqxkqxkq", "says one thing again and again"],
  ["abcdefghijklmnop", "follows the order of letters or figures"],
  ["12.03.1984", "holds a date"],
  ["a long winter evening", "is made of few, common words"],
  ["k7#QpXw2", "is too short for letters at random"],
])("%j is weak: it %s", async (text, reason) => {
  const sentence = await weigh(text);
  expect(sentence).toContain(`it ${reason}.`);
  expect(sentence).not.toContain(text.trim() || "   ");
});

test.each([strongPassphrase, otherStrongPassphrase, "x8Kd92mPqLs", "山の上に小さな灯りが三つ見える"])(
  "%j is strong enough, and stays so whoever it is that takes it",
  async (text) => {
    expect(await weigh(text)).toBeUndefined();
    expect(await weigh(text, ["simulated.tester"])).toBeUndefined();
    await expect(requireStrength(passphraseBytes(text), [])).resolves.toBeUndefined();
  },
);

test("a name that is known here is worth little, however it is written", async () => {
  const name = "tveitlundsen";
  expect(await weigh(`${name}-4417`, [name])).toContain("holds a name that is known here");
  expect(await weigh(`${name.toUpperCase()}-4417`, [name])).toContain("holds a name that is known here");
});

test("blanks at the ends count: they are part of the passphrase and are not cut off", async () => {
  // Ten letters at random are just enough, nine are not.
  const nine = "x8Kd92mPq";
  expect(await weigh(nine)).toContain("too short");
  expect(await weigh(` ${nine} `)).toBeUndefined();
});

test("what looks the same weighs the same, however it was typed", async () => {
  expect(await weigh("ｐａｓｓｗｏｒｄ１")).toBe(await weigh("password1"));
});

test("a weak one is refused before anything is done, and no passphrase is none to weigh", async () => {
  await expect(requireStrength(passphraseBytes("12345678"), [])).rejects.toThrow("Nothing was changed or written.");
  await expect(requireStrength(undefined, [])).resolves.toBeUndefined();
});
