import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type * as E from "electron";
import { beforeEach, describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { RegisterHome } from "../../../electron/register-host/register-home.ts";
import { rememberPassphrase } from "../../../electron/window/remembered-passphrase.ts";
import { systemKeyStore } from "../../../electron/window/system-key-store.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { temporaryFolder, testCircumstances } from "../register/register-world.ts";
import { otherStrongPassphrase, strongPassphrase } from "../strong-passphrase.ts";
import { keyStore, safeStorage } from "./electron-fake.ts";

const passphrase = passphraseBytes(strongPassphrase);

beforeEach(() => {
  keyStore.isThere = true;
  keyStore.backend = "gnome_libsecret";
});

/** A program's start in a data folder, with the key store of a fake Electron. */
async function start(dataFolder: string, platform: NodeJS.Platform = "linux") {
  const workspace = new WorkspaceState(defaultSettings, "no-samples");
  const home = new RegisterHome({ dataFolder, workspace, circumstances: testCircumstances(), waitMilliseconds: 0 });
  await home.begin();
  const file = join(dataFolder, "remembered-passphrase");
  const store = systemKeyStore(safeStorage as unknown as E.SafeStorage, platform);
  const remembering = rememberPassphrase(makeHandlers(workspace, "window", home), store, file);
  await remembering.unlockAtStart();
  return { ...remembering, home, file };
}

async function withPassphrase(dataFolder: string) {
  const program = await start(dataFolder);
  await program.handlers["register.openOwn"]({});
  await program.handlers["register.setPassphrase"]({ passphrase });
  return program;
}

const isLocked = async ({ handlers }: Awaited<ReturnType<typeof start>>) =>
  (await handlers["workspace.read"]({})).register?.locked;
const stateOf = async ({ handlers }: Awaited<ReturnType<typeof start>>) =>
  (await handlers["application.describe"]({})).passphraseStore;

describe("the passphrase on this computer", () => {
  test("is not remembered unless the person asks, and then opens the next start", async () => {
    const folder = temporaryFolder();
    const first = await withPassphrase(folder);
    await first.handlers["register.lock"]({});
    await first.handlers["register.unlock"]({ passphrase });
    expect([existsSync(first.file), await stateOf(first)]).toEqual([false, "empty"]);
    await first.handlers["register.lock"]({});
    await first.handlers["register.unlock"]({ passphrase, remember: true });
    expect(await stateOf(first)).toBe("holds it");
    expect(readFileSync(first.file, "latin1")).not.toContain(passphrase);
    expect(statSync(first.file).mode & 0o777).toBe(0o600);
    first.home.close();
    const second = await start(folder);
    expect(await isLocked(second)).toBe(false);
    second.home.close();
  });

  test("is remembered anew when it is changed, and no more when it is removed or forgotten", async () => {
    const folder = temporaryFolder();
    const first = await withPassphrase(folder);
    await first.handlers["register.unlock"]({ passphrase, remember: true });
    await first.handlers["register.setPassphrase"]({ passphrase: passphraseBytes(otherStrongPassphrase) });
    first.home.close();
    const second = await start(folder);
    expect(await isLocked(second)).toBe(false);
    await second.handlers["register.forgetPassphrase"]({});
    expect([existsSync(second.file), await stateOf(second)]).toEqual([false, "empty"]);
    await second.handlers["register.unlock"]({ passphrase: passphraseBytes(otherStrongPassphrase), remember: true });
    await second.handlers["register.removePassphrase"]({});
    expect(existsSync(second.file)).toBe(false);
    second.home.close();
  });

  test("a wrong one is never remembered, and a remembered one that no longer fits is forgotten", async () => {
    const folder = temporaryFolder();
    const first = await withPassphrase(folder);
    await first.handlers["register.lock"]({});
    const wrong = Promise.resolve(
      first.handlers["register.unlock"]({ passphrase: passphraseBytes("wrong"), remember: true }),
    );
    await expect(wrong).rejects.toThrow("not the passphrase");
    expect(existsSync(first.file)).toBe(false);
    await first.handlers["register.unlock"]({ passphrase, remember: true });
    // As another program would: past the remembering handlers.
    const plain = makeHandlers(first.home.workspace, "browser", first.home);
    await plain["register.setPassphrase"]({ passphrase: passphraseBytes(otherStrongPassphrase) });
    first.home.close();
    const second = await start(folder);
    expect([await isLocked(second), existsSync(second.file)]).toEqual([true, false]);
    second.home.close();
  });

  test("is kept nowhere where the system has no key store, or one that protects nothing", async () => {
    const folder = temporaryFolder();
    keyStore.backend = "basic_text";
    const first = await withPassphrase(folder);
    await first.handlers["register.unlock"]({ passphrase, remember: true });
    expect([existsSync(first.file), await stateOf(first)]).toEqual([false, "absent"]);
    keyStore.backend = "kwallet6";
    keyStore.isThere = false;
    expect(await stateOf(first)).toBe("absent");
    first.home.close();
  });
});
