import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import { hostRequests } from "../../electron/boundary/host-requests.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { directHost } from "./direct-host.ts";
import { ownWorld } from "./register-host/host-world.ts";
import { bytesOf } from "./simulated-recordings.ts";

const rows = (newtons: number) =>
  bytesOf(
    `time (s),left (N),right (N)\n${Array.from({ length: 5 }, (_, row) => `0.00${row},${newtons}.25,330.5\n`).join("")}`,
  );
const filesOf = (workspace: { readonly recordings: readonly { readonly file: string }[] }) =>
  workspace.recordings.map(({ file }) => file);
const answers = { test: "countermovementJump", limb: "both" } as const;

describe("taking recordings out of a session in memory", () => {
  async function opened() {
    const host = directHost(makeHandlers(new WorkspaceState(defaultSettings, "no-such-folder"), "browser"));
    for (const [index, name] of ["a.csv", "b.csv", "c.csv"].entries()) {
      await host.call("recordings.add", { path: `day/${name}`, bytes: rows(300 + index) });
    }
    await host.call("recordings.answer", { folder: "day", files: ["a.csv", "b.csv"], answers });
    return host;
  }

  test("is one step for many; undo brings them back with what was said of them, and redo takes them out again", async () => {
    const host = await opened();
    const before = await host.call("workspace.read", {});
    const out = await host.call("recordings.takeOut", { folder: "day", files: ["a.csv", "c.csv"] });
    expect([filesOf(out), out.undo]).toEqual([["b.csv"], "Take 2 recordings out of the session"]);
    expect(out.session?.description.files?.map(({ file }) => file)).toEqual(["b.csv"]);
    expect(out.session?.findings).toEqual([]);
    const back = await host.call("workspace.undo", {});
    expect([back.session, back.recordings]).toEqual([before.session, before.recordings]);
    expect(filesOf(await host.call("workspace.redo", {}))).toEqual(["b.csv"]);
  });

  test("comes back beside a recording that took its name meanwhile: neither is lost", async () => {
    const host = await opened();
    await host.call("recordings.takeOut", { folder: "day", files: ["c.csv"] });
    await host.call("recordings.add", { path: "day/c.csv", bytes: rows(400) });
    expect(filesOf(await host.call("workspace.undo", {}))).toEqual(["a.csv", "b.csv", "c (2).csv", "c.csv"]);
  });

  test("refuses a recording that is not there, and then nothing was changed", async () => {
    const host = await opened();
    await expect(host.call("recordings.takeOut", { folder: "day", files: ["a.csv", "z.csv"] })).rejects.toThrow(
      "z.csv",
    );
    expect(filesOf(await host.call("workspace.read", {}))).toHaveLength(3);
  });
});

describe("taking recordings out of a session of the register", () => {
  const folder = "A-1/2026-11-02";

  async function kept() {
    const world = await ownWorld();
    const { host, athlete } = world;
    await host.call("sessions.start", { session: crypto.randomUUID(), athlete, plan: { date: "2026-11-02" } });
    for (const [index, name] of ["a.csv", "b.csv"].entries()) {
      await host.call("recordings.add", { path: `${folder}/${name}`, bytes: rows(300 + index) });
    }
    await host.call("recordings.answer", { folder, files: ["a.csv"], answers });
    return world;
  }

  test("moves them to the bin as one action of the journal; undo and the bin both bring them back as they were", async () => {
    const { host, home } = await kept();
    const before = await host.call("workspace.read", {});
    const out = await host.call("recordings.takeOut", { folder, files: ["a.csv", "b.csv"] });
    expect([filesOf(out), out.undo]).toEqual([[], "Take 2 recordings out of the session"]);
    expect(home.register.reads.journal(1)[0]?.action).toBe("moved to the bin");
    const { records } = await host.call("bin.read", {});
    expect(records.map(({ title }) => title)).toEqual([
      "Recording a.csv of 2026-11-02",
      "Recording b.csv of 2026-11-02",
    ]);
    const back = await host.call("workspace.undo", {});
    expect(back.session).toEqual(before.session);

    await host.call("recordings.takeOut", { folder, files: ["a.csv"] });
    const [a] = (await host.call("bin.read", {})).records;
    const again = await host.call("records.takeOut", { kind: a!.kind, id: a!.id });
    expect(again.session).toEqual(before.session);
    expect(home.register.verify().problems).toEqual([]);
  });

  test("leaves the bin only where its name is free, so that two are never taken for one", async () => {
    const { host } = await kept();
    await host.call("recordings.takeOut", { folder, files: ["b.csv"] });
    await host.call("recordings.add", { path: `${folder}/b.csv`, bytes: rows(400) });
    const [b] = (await host.call("bin.read", {})).records;
    await expect(host.call("records.takeOut", { kind: b!.kind, id: b!.id })).rejects.toThrow(
      "Another recording called b.csv is in this session now; nothing was changed.",
    );
  });

  test("can be erased for good from there", async () => {
    const { host, home } = await kept();
    await host.call("recordings.takeOut", { folder, files: ["b.csv"] });
    const [b] = (await host.call("bin.read", {})).records;
    const preview = await host.call("records.previewErasure", { kind: b!.kind, id: b!.id });
    expect(preview.recordings).toBe(1);
    await host.call("records.erase", { kind: b!.kind, id: b!.id });
    expect((await host.call("bin.read", {})).records).toEqual([]);
    expect(filesOf(await host.call("workspace.read", {}))).toEqual(["a.csv"]);
    expect(home.register.verify().problems).toEqual([]);
  });
});

test("the request has an exact shape", () => {
  const accepts = (request: unknown) => hostRequests["recordings.takeOut"].schema.safeParse(request).success;
  expect(accepts({ folder: "", files: ["a.csv"] })).toBe(true);
  for (const wrong of [
    { folder: "" },
    { folder: "", files: [] },
    { folder: "", files: [""] },
    { folder: "", files: ["a"], also: 1 },
  ]) {
    expect(accepts(wrong)).toBe(false);
  }
});
