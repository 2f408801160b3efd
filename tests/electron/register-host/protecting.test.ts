import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { hostWorld, ownWorld, registerOf } from "./host-world.ts";

const passphrase = passphraseBytes(strongPassphrase);

async function lockableWorld() {
  const world = await ownWorld();
  const session = crypto.randomUUID();
  await world.host.call("sessions.start", { session, athlete: world.athlete, plan: { date: "2026-11-02" } });
  await world.host.call("register.setPassphrase", { passphrase });
  return { ...world, session };
}

describe("a passphrase", () => {
  test("locks everything away at once: no session, no name, no athlete is given out until it is said again", async () => {
    const { host, session } = await lockableWorld();
    const locked = await host.call("register.lock", {});
    expect(registerOf(locked)).toMatchObject({ encrypted: true, locked: true });
    expect([locked.sessions, locked.session, locked.undo]).toEqual([[], undefined, ""]);
    expect(JSON.stringify(locked)).not.toContain("Brekke");
    await expect(host.call("athletes.list", { filter: {} })).rejects.toThrow("locked");
    await expect(host.call("register.unlock", { passphrase: passphraseBytes("wrong") })).rejects.toThrow(
      "not the passphrase",
    );
    const again = await host.call("register.unlock", { passphrase });
    expect([registerOf(again).locked, again.keptAs]).toEqual([false, session]);
  });

  test("is asked for by the next start, and nothing in the folder can be read without it", async () => {
    const first = await lockableWorld();
    await first.host.call("backups.make", {});
    first.close();
    for (const name of readdirSync(first.dataFolder, { recursive: true, encoding: "utf8" })) {
      if (!/\.sqlite|\.json/.test(name) || name.endsWith("-backups")) continue;
      expect(readFileSync(join(first.dataFolder, name), "latin1").includes("Brekke"), name).toBe(false);
    }
    const second = await hostWorld({ dataFolder: first.dataFolder });
    expect(registerOf(await second.host.call("workspace.read", {})).locked).toBe(true);
    await second.host.call("register.unlock", { passphrase });
    expect((await second.host.call("athletes.page", { athlete: first.athlete })).page?.athlete.content.name).toBe(
      "Ylva Brekke",
    );
  });

  test("can be removed again", async () => {
    const { host } = await lockableWorld();
    expect(registerOf(await host.call("register.removePassphrase", {})).encrypted).toBe(false);
    expect(registerOf(await host.call("register.lock", {})).locked).toBe(false);
  });

  test("what was brought in as files stays open while the register is locked", async () => {
    const { host } = await lockableWorld();
    await host.call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 519)) });
    expect((await host.call("register.lock", {})).sessions.map(({ folder }) => folder)).toEqual(["loose"]);
  });
});

describe("locking itself", () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] }));
  afterEach(() => void vi.useRealTimers());

  test("happens after the set minutes without a sign of a person, and each sign starts them anew", async () => {
    const { host } = await lockableWorld();
    await host.call("register.lockAfter", { minutes: 10 });
    vi.advanceTimersByTime(9 * 60_000);
    expect(await host.call("register.attend", { present: true })).toEqual({ locked: false });
    vi.advanceTimersByTime(9 * 60_000);
    expect(await host.call("register.attend", { present: false })).toEqual({ locked: false });
    vi.advanceTimersByTime(2 * 60_000);
    expect(await host.call("register.attend", { present: false })).toEqual({ locked: true });
  });

  test("never happens where the person chose never", async () => {
    const { host } = await lockableWorld();
    await host.call("register.lockAfter", { minutes: 0 });
    vi.advanceTimersByTime(24 * 60 * 60_000);
    expect(await host.call("register.attend", { present: true })).toEqual({ locked: false });
  });

  test("is put off by what a person does, and not by a watch that is on, nor by what screens ask by themselves", async () => {
    const { host } = await lockableWorld();
    await host.call("register.lockAfter", { minutes: 5 });
    const { folder } = await host.call("workspace.read", {});
    await host.call("watch.start", { folder: temporaryFolder() });
    vi.advanceTimersByTime(4 * 60_000);
    await host.call("session.change", { folder, change: { massKg: 71 } });
    vi.advanceTimersByTime(4 * 60_000);
    expect(await host.call("register.attend", { present: false })).toEqual({ locked: false });
    for (let minute = 0; minute < 2; minute += 1) {
      vi.advanceTimersByTime(60_000);
      await host.call("watch.read", {});
      await host.call("workspace.read", {});
      await host.call("register.attend", { present: false });
    }
    expect(await host.call("register.attend", { present: false })).toEqual({ locked: true });
  });
});
