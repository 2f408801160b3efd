import { describe, expect, onTestFinished, test, vi } from "vitest";
import type { HostApi, HostRequestName } from "../../../electron/boundary/host-api.ts";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { startHostWorker } from "../../../electron/worker/remote-handlers.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { registerOf } from "../register-host/host-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { watchThreads } from "./threads.ts";

const recording = bytesOf(jumpText("both", 501));

/** A host whose thread has a fault for some files (faulty-worker.ts), and little to work with: what weighing a passphrase needs, and half as much again. */
function faultyHost(milliseconds = 120_000, dataFolder?: string) {
  const threads = watchThreads();
  const remote = startHostWorker(
    { host: "browser", sampleTraces: "no-samples", ...(dataFolder !== undefined && { dataFolder }) },
    { budgets: { heapMegabytes: 192, milliseconds }, entry: new URL("faulty-worker.ts", import.meta.url) },
  );
  onTestFinished(() => remote.close());
  const call = async <Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) =>
    (await (remote.handlers[name] as (payload: unknown) => unknown)(request)) as HostApi[Name]["reply"];
  return { call, threads };
}

describe("a thread that ended over a file", () => {
  test("is started again with what was open, its decisions and its steps; the file is named and put aside", async () => {
    const { call, threads } = faultyHost();
    await call("recordings.add", { path: "loose/a.csv", bytes: recording });
    const answers = { test: "countermovementJump", limb: "both" } as const;
    const before = await call("recordings.answer", { folder: "loose", files: ["a.csv"], answers });
    const bomb = call("recordings.add", { path: "month-6/fills-memory.csv", bytes: recording });
    const reading = call("workspace.read", {});
    const adding = call("recordings.add", { path: "loose/b.csv", bytes: recording });
    await expect(bomb).rejects.toThrow(RequestRefused);
    await expect(bomb).rejects.toThrow("month-6/fills-memory.csv took more memory than the program has for one file");
    await expect(adding).rejects.toThrow("it was not done. Ask for it again.");
    const after = await reading;
    expect(after).toEqual({ ...before, restarted: after.restarted });
    expect(after.restarted).toContain("month-6/fills-memory.csv");
    expect(threads.map(({ ended }) => ended)).toEqual([true, false]);
    expect((await call("workspace.undo", {})).undo).toBe("");
    expect((await call("workspace.redo", {})).session).toEqual(before.session);
  });

  test("goes on with a batch that is coming in: later files join the session they belong to", async () => {
    const { call } = faultyHost();
    const batch = "7";
    await call("recordings.add", { path: "m/a.csv", bytes: recording });
    await call("recordings.add", { path: "m/b.csv", bytes: bytesOf(jumpText("both", 503)), batch });
    await expect(call("recordings.add", { path: "m/fills-memory.csv", bytes: recording, batch })).rejects.toThrow();
    await call("recordings.add", { path: "m/c.csv", bytes: bytesOf(jumpText("both", 505)), batch });
    expect((await call("workspace.read", {})).sessions.map(({ folder }) => folder)).toEqual(["m", "m (2)"]);
  });

  test("by time is ended too, and the file is named", async () => {
    const { call, threads } = faultyHost(2000);
    await call("recordings.add", { path: "a.csv", bytes: recording });
    await expect(
      call("recordings.add", { path: "never-ends.csv", bytes: bytesOf(jumpText("both", 511)) }),
    ).rejects.toThrow("never-ends.csv took more time than the program has for one file, and was put aside.");
    expect((await call("workspace.read", {})).recordings.map(({ file }) => file)).toEqual(["a.csv"]);
    expect(threads).toHaveLength(2);
  });

  test("for reasons of its own is reported, and named to the person", async () => {
    const reported = vi.spyOn(console, "error").mockImplementation(() => undefined);
    onTestFinished(() => reported.mockRestore());
    const { call } = faultyHost();
    await expect(call("recordings.add", { path: "ends-thread.csv", bytes: recording })).rejects.toThrow(
      "came to an unexpected end at ends-thread.csv",
    );
    expect(reported).toHaveBeenCalledOnce();
    expect((await call("workspace.read", {})).recordings).toEqual([]);
  });

  test("twice over the same one does not open it a third time, and opens the others of the session", async () => {
    const { call, threads } = faultyHost();
    const bytes = bytesOf(jumpText("both", 507));
    const add = () => call("recordings.add", { path: "s/fills-memory.csv", bytes: Uint8Array.from(bytes) });
    await expect(add()).rejects.toThrow("put aside");
    await expect(add()).rejects.toThrow("put aside");
    expect(await add()).toMatchObject({
      outcome: "refused",
      message: expect.stringContaining("s/fills-memory.csv was left out because it took more memory or time"),
    });
    expect((await call("recordings.add", { path: "s/fine.csv", bytes: recording })).outcome).not.toBe("refused");
    expect(threads).toHaveLength(3);
  });
});

test("a register under a passphrase comes back locked and can be written to after unlocking", async () => {
  const dataFolder = temporaryFolder();
  const word = () => passphraseBytes("nine grey geese on a pond");
  const { call } = faultyHost(120_000, dataFolder);
  await call("register.openOwn", {});
  const [athlete, session] = [crypto.randomUUID(), crypto.randomUUID()];
  await call("records.save", { record: { kind: "athletes", id: athlete, content: { code: "A-1" } } });
  await call("sessions.start", { session, athlete, plan: { date: "2026-11-02" } });
  await expect(call("recordings.add", { path: "x/fills-memory.csv", bytes: recording })).rejects.toThrow("put aside");
  const plain = await call("workspace.read", {});
  expect([plain.keptAs, registerOf(plain).readOnlyBecause]).toEqual([session, undefined]);
  await call("register.setPassphrase", { passphrase: word() });
  const second = { path: "x/fills-memory-too.csv", bytes: bytesOf(jumpText("both", 509)) };
  await expect(call("recordings.add", second)).rejects.toThrow("The register is locked again");
  const locked = await call("workspace.read", {});
  expect(registerOf(locked)).toMatchObject({ locked: true });
  expect(locked.restarted).toContain("The register is locked again: give its passphrase to go on.");
  const unlocked = await call("register.unlock", { passphrase: word() });
  expect([unlocked.keptAs, registerOf(unlocked).readOnlyBecause]).toEqual([session, undefined]);
  await call("records.save", { record: { kind: "athletes", id: crypto.randomUUID(), content: { code: "A-2" } } });
});
