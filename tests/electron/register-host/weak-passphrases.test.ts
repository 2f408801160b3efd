import { existsSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { passphraseBytes } from "../../../electron/register/passphrase-bytes.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { ownWorld, registerOf } from "./host-world.ts";

// Seen accepted.
const weak = [passphraseBytes("12345678"), passphraseBytes("        ")];

test("a weak passphrase is refused for the register, a sealed copy and a sealed archive; nothing is written", async () => {
  const { host } = await ownWorld();
  const place = join(temporaryFolder(), "elsewhere");
  for (const passphrase of weak) {
    expect((await host.call("passphrase.weigh", { passphrase })).weakness).toContain("guessed too soon");
    await expect(host.call("register.setPassphrase", { passphrase })).rejects.toThrow("guessed too soon");
    await expect(host.call("backups.make", { place, passphrase })).rejects.toThrow("guessed too soon");
    await expect(host.call("archive.export", { place, passphrase })).rejects.toThrow("guessed too soon");
    await expect(host.call("archive.export", { passphrase })).rejects.toThrow("guessed too soon");
  }
  expect(existsSync(place)).toBe(false);
  expect(registerOf(await host.call("workspace.read", {})).encrypted).toBe(false);
  const strong = await host.call("passphrase.weigh", { passphrase: passphraseBytes(strongPassphrase) });
  expect(strong).toEqual({});
});

test("a register that is under a weak one already opens with it, and can be put under a better one", async () => {
  const { host, home } = await ownWorld();
  const [old] = weak;
  setPassphrase(home.register, old!);
  await host.call("register.lock", {});
  expect(registerOf(await host.call("register.unlock", { passphrase: old! })).locked).toBe(false);
  const passphrase = passphraseBytes(strongPassphrase);
  await host.call("register.setPassphrase", { passphrase });
  await host.call("register.lock", {});
  await expect(host.call("register.unlock", { passphrase: old! })).rejects.toThrow("not the passphrase");
  expect(registerOf(await host.call("register.unlock", { passphrase })).locked).toBe(false);
});
