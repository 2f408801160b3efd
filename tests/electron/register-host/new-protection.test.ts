import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { checkCode } from "../../../electron/register/head-code.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { hostWorld, ownWorld, registerOf } from "./host-world.ts";

const passphrase = passphraseBytes("nine grey geese");
const earlier = fileURLToPath(new URL("../register/earlier/schema-3-passphrase.sqlite", import.meta.url));

test("a register of an earlier protection is brought to today's while its sessions are used, and says how far it is", async () => {
  const dataFolder = mkdtempSync(join(tmpdir(), "counterpoise-earlier-"));
  onTestFinished(() => rmSync(dataFolder, { recursive: true, force: true }));
  copyFileSync(earlier, join(dataFolder, "register.sqlite"));
  const { host } = await hostWorld({ dataFolder });
  const unlocked = registerOf(await host.call("register.unlock", { passphrase: Uint8Array.from(passphrase) }));
  expect(unlocked.conversion?.total).toBeGreaterThan(10);
  expect((await host.call("athletes.list", { filter: {} })).athletes.map(({ code }) => code)).toEqual(["EL-1", "EL-2"]);
  await expect
    .poll(async () => registerOf(await host.call("workspace.read", {})).conversion, { timeout: 10_000 })
    .toBeUndefined();
  expect((await host.call("register.verify", {})).problems).toEqual([]);
  expect((await host.call("register.verify", {})).isKeyed).toBe(true);
});

test("a sheet of a session in the register carries the journal's code, which can be checked later; others do not", async () => {
  const world = await ownWorld();
  const session = crypto.randomUUID();
  const begun = await world.host.call("sessions.start", {
    session,
    athlete: world.athlete,
    plan: { date: "2026-11-02" },
  });
  await world.host.call("recordings.add", { path: `${begun.folder}/jump.csv`, bytes: bytesOf(jumpText("both", 519)) });
  const { footer } = await world.host.call("sheet.read", { folder: begun.folder });
  const [, code = ""] = /journal (\S+)$/.exec(footer) ?? [];
  await world.host.call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 520)) });
  expect((await world.host.call("sheet.read", { folder: "loose" })).footer).not.toContain("journal");
  world.close();
  const register = await openRegister(join(world.dataFolder, "register.sqlite"));
  expect(checkCode(register.connection, code)).toMatchObject({ fits: true });
  register.close();
});
