import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import type { Host } from "../../../electron/boundary/host-api.ts";
import type { WatchView } from "../../../electron/boundary/watch-view.ts";
import { writtenTime } from "../../../electron/cautions/add-cautions.ts";
import { makeHandlers, openWatch } from "../../../electron/handlers/host-handlers.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { directHost } from "../direct-host.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { ownWorld } from "./host-world.ts";

const passphrase = () => passphraseBytes("nine grey geese on a pond");

function recording(number: number): string {
  const lines = Array.from({ length: 80 }, (_, row) => `${(row / 100).toFixed(2)};340.5;${340 + (row % 7)}.5`);
  return `time (s);left (N);right (N)\n${lines.join("\n")}\n${"\n".repeat(number)}`;
}

async function until(host: Host, holds: (view: WatchView) => boolean): Promise<WatchView> {
  const started = performance.now();
  for (;;) {
    const view = await host.call("watch.read", {});
    if (holds(view)) return view;
    if (performance.now() - started > 20_000) throw new Error(`It never came: ${JSON.stringify(view)}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** A session of today in a register under a passphrase, filled from a watched folder in which one recording lies. */
async function watchedWorld() {
  const world = await ownWorld({ circumstances: { who: "tester", now: () => new Date() } });
  const { host, athlete } = world;
  const session = crypto.randomUUID();
  await host.call("sessions.start", { session, athlete, plan: { date: writtenTime(new Date()).slice(0, 10) } });
  await host.call("register.setPassphrase", { passphrase: passphrase() });
  const folder = join(temporaryFolder(), "Brekke today");
  mkdirSync(folder);
  writeFileSync(join(folder, "brekke-1.csv"), recording(1));
  await host.call("watch.start", { folder });
  onTestFinished(() => void host.call("watch.stop", {}));
  await host.call("watch.expect", { next: { test: "countermovementJump", limb: "both" } });
  await until(host, (view) => view.taken === 1);
  const paths = () =>
    world.home.register.reads.describedSession(session)?.recordings.map(({ content }) => content.path);
  return { ...world, session, folder, paths };
}

test("what comes in while the register is locked waits, every version of it, and is in the session after unlocking", async () => {
  const { host, home, session, folder, paths } = await watchedWorld();
  await host.call("register.lock", {});
  writeFileSync(join(folder, "brekke-2.csv"), recording(2));
  await until(host, ({ counts }) => counts?.waiting === 1);
  writeFileSync(join(folder, "brekke-2.csv"), recording(3));
  writeFileSync(join(folder, "brekke-4.png"), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
  const locked = await until(host, ({ counts }) => (counts?.waiting ?? 0) >= 2);
  expect(locked).toMatchObject({ state: "watching", counts: { taken: 1 } });
  expect(JSON.stringify(locked)).not.toMatch(/brekke|A-1|countermovement/i);
  await host.call("register.unlock", { passphrase: passphrase() });
  const unlocked = await until(host, (view) => view.taken >= 3);
  expect(unlocked.counts).toBeUndefined();
  expect(unlocked.newest?.session).toContain("A-1");
  expect(paths()).toEqual(["brekke-1.csv", "brekke-2.csv"]);
  // The first version of the second recording lies in the bin, as it would have without locking.
  const binned = home.register.reads.bin().map(({ content }) => ("path" in content ? content.path : ""));
  expect(binned).toEqual(["brekke-2.csv"]);
  const stated = home.register.reads.describedSession(session)?.recordings.map(({ content }) => content.stated?.test);
  expect(stated).toEqual(["countermovementJump", "countermovementJump"]);
});

test("the locked screen gives no numbers out where the person does not want it", async () => {
  const { host, folder } = await watchedWorld();
  await host.call("register.countWhileLocked", { counts: false });
  await host.call("register.lock", {});
  const { revision } = await host.call("watch.read", {});
  writeFileSync(join(folder, "brekke-2.csv"), recording(2));
  const view = await until(host, (each) => each.revision > revision);
  expect(view).toEqual({
    state: "watching",
    folder: "",
    revision: view.revision,
    writing: [],
    taken: 0,
    notTaken: [],
    next: {},
  });
});

test("a new recording is a sign that people are there", async () => {
  const { host, home, folder } = await watchedWorld();
  const attend = vi.spyOn(home, "attend");
  writeFileSync(join(folder, "brekke-2.csv"), recording(2));
  await until(host, (view) => view.taken === 2);
  expect(attend).toHaveBeenCalledTimes(1);
});

test("a watch goes on in another thread from plain data: locked, it takes nothing twice and loses nothing", async () => {
  const { host, home, folder, paths } = await watchedWorld();
  await host.call("register.lock", {});
  writeFileSync(join(folder, "brekke-2.csv"), recording(2));
  await until(host, ({ counts }) => counts?.waiting === 1);
  const held = structuredClone(home.watch?.held);
  expect(held).toMatchObject({ taken: 1, files: [{ path: "brekke-1.csv" }] });
  expect(JSON.stringify(held)).not.toContain("A-1");
  await host.call("watch.stop", {});
  const next = openWatch(home.workspace, home);
  const again = directHost(makeHandlers(home.workspace, "browser", home, next));
  onTestFinished(() => next.stop());
  if (held === undefined) throw new Error("The watch was on.");
  next.goOn(held);
  await until(again, ({ counts }) => counts?.waiting === 1);
  await again.call("register.unlock", { passphrase: passphrase() });
  await until(again, (view) => view.taken === 2);
  expect(paths()).toEqual(["brekke-1.csv", "brekke-2.csv"]);
  expect(home.register.reads.bin()).toEqual([]);
});
