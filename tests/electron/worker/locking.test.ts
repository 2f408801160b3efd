import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import type { HostApi, HostRequestName } from "../../../electron/boundary/host-api.ts";
import type { WatchView } from "../../../electron/boundary/watch-view.ts";
import { writtenTime } from "../../../electron/cautions/add-cautions.ts";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { startHostWorker } from "../../../electron/worker/remote-handlers.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { registerOf } from "../register-host/host-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { watchThreads } from "./threads.ts";

const word = () => passphraseBytes("nine grey geese on a pond");
const stated = { files: ["a.csv"], answers: { test: "countermovementJump", limb: "both" } as const };

/** The person's own register under a passphrase with one session shown, and one session from files beside it. */
async function protectedHost() {
  const threads = watchThreads();
  const remote = startHostWorker({ host: "browser", sampleTraces: "no-samples", dataFolder: temporaryFolder() });
  onTestFinished(() => remote.close());
  const call = async <Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) =>
    (await (remote.handlers[name] as (payload: unknown) => unknown)(request)) as HostApi[Name]["reply"];
  await call("register.openOwn", {});
  const [athlete, session] = [crypto.randomUUID(), crypto.randomUUID()];
  const content = { code: "A-1", name: "Ylva Brekke" };
  await call("records.save", { record: { kind: "athletes", id: athlete, content } });
  await call("register.setPassphrase", { passphrase: word() });
  await call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 519)) });
  await call("recordings.answer", { folder: "loose", ...stated });
  const shown = await call("sessions.start", { session, athlete, plan: { date: "2026-11-02" } });
  return { call, threads, session, athlete, folder: shown.folder };
}

describe("locking", () => {
  test("ends the thread that held the key, and another one goes on with what is not of the register", async () => {
    const { call, threads, session, folder } = await protectedHost();
    const before = await call("workspace.show", { folder: "loose" });
    await call("workspace.show", { folder });
    const locked = await call("register.lock", {});
    expect(threads).toEqual([{ ended: true }, { ended: false }]);
    expect(registerOf(locked)).toMatchObject({ encrypted: true, locked: true });
    expect(JSON.stringify(locked)).not.toContain("Brekke");
    expect([locked.folder, locked.session, locked.undo]).toEqual(["loose", before.session, "Answer for a.csv"]);
    expect(locked.restarted).toBeUndefined();
    expect((await call("workspace.undo", {})).undo).toBe("");
    expect((await call("workspace.redo", {})).session).toEqual(before.session);
    await expect(call("athletes.list", { filter: {} })).rejects.toThrow("locked");
    await expect(call("register.unlock", { passphrase: passphraseBytes("wrong") })).rejects.toThrow(
      "not the passphrase",
    );
    const again = await call("register.unlock", { passphrase: word() });
    expect([registerOf(again).readOnlyBecause, again.keptAs, again.folder]).toEqual([undefined, session, folder]);
    expect(again.sessions.map((each) => each.folder).toSorted()).toEqual([folder, "loose"].toSorted());
    await call("register.lock", {});
    expect(threads.map(({ ended }) => ended)).toEqual([true, true, false]);
  });

  test("leaves a folder watched: the new thread counts what comes in, and takes it in once it is unlocked", async () => {
    const { call, threads, athlete } = await protectedHost();
    const date = writtenTime(new Date()).slice(0, 10);
    await call("sessions.start", { session: crypto.randomUUID(), athlete, plan: { date } });
    const folder = temporaryFolder();
    const write = (name: string, seed: number) => writeFileSync(join(folder, name), jumpText("both", seed));
    const until = async (holds: (view: WatchView) => boolean) => {
      for (let looks = 0; looks < 400; looks += 1) {
        const view = await call("watch.read", {});
        if (holds(view)) return view;
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      throw new Error("It never came.");
    };
    write("one.csv", 523);
    await call("watch.start", { folder });
    await until((view) => view.taken === 1);
    await call("register.lock", {});
    write("two.csv", 525);
    const locked = await until((view) => view.counts?.waiting === 1);
    expect([threads.length, locked.counts?.taken, locked.folder, locked.writing]).toEqual([2, 1, "", []]);
    await call("register.unlock", { passphrase: word() });
    await until((view) => view.taken === 2);
    await call("watch.stop", {});
    const { recordings, keptAs } = await call("workspace.read", {});
    expect(keptAs).toBeDefined();
    expect(recordings.map(({ file }) => file)).toEqual(["one.csv", "two.csv"]);
  });

  test("answers what was asked meanwhile: by a sentence, or from the new thread where it only tells", async () => {
    const { call, threads } = await protectedHost();
    const lock = call("register.lock", {});
    const adding = call("recordings.add", { path: "loose/b.csv", bytes: bytesOf(jumpText("both", 521)) });
    const reading = call("workspace.read", {});
    await expect(adding).rejects.toThrow(RequestRefused);
    await expect(adding).rejects.toThrow("The register was locked before this was begun");
    expect(registerOf(await reading).locked).toBe(true);
    expect((await lock).sessions.map(({ folder }) => folder)).toEqual(["loose"]);
    expect(threads).toHaveLength(2);
  });

  test("of a register without a passphrase changes nothing", async () => {
    const threads = watchThreads();
    const remote = startHostWorker({ host: "browser", sampleTraces: "no-samples", dataFolder: temporaryFolder() });
    onTestFinished(() => remote.close());
    await remote.handlers["register.openOwn"]({});
    expect(registerOf(await remote.handlers["register.lock"]({})).locked).toBe(false);
    expect(threads).toEqual([{ ended: false }]);
  });
});

test("a passphrase goes over to the working thread: whoever sent it holds it no longer", async () => {
  const { call } = await protectedHost();
  await call("register.lock", {});
  const passphrase = word();
  const unlocking = call("register.unlock", { passphrase });
  expect(passphrase.byteLength).toBe(0);
  const inLargerBuffer = Buffer.concat([Buffer.from("beside "), word()]).subarray(7);
  await unlocking;
  const setting = call("register.setPassphrase", { passphrase: inLargerBuffer });
  expect(inLargerBuffer.every((byte) => byte === 0)).toBe(true);
  await setting;
});
