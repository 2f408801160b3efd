import { expect, test } from "vitest";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { weighApart } from "../../electron/register/strength/weigh-apart.ts";
import { weighApart as weighHere } from "../electron/light-weigh-apart.ts";

test.each(["P@ssw0rd", "tveitlundsen-4417", "nine grey geese walk over a ridge", "山の上に小さな灯りが三つ見える"])(
  "a process of its own says of %j what the estimate in its place says in tests of the host",
  async (text) => {
    const toWeigh = () => ({ passphrase: passphraseBytes(text), known: ["tveitlundsen"] });
    expect(await weighApart(toWeigh())).toBe(await weighHere(toWeigh()));
  },
);
