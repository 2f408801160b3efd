import { beforeEach, describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { Host } from "../../electron/boundary/host-api.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { directHost } from "./direct-host.ts";
import { bytesOf, jumpText } from "./simulated-recordings.ts";

const jumps = { "jump-1.csv": jumpText("both", 501), "jump-2.csv": jumpText("both", 503) };
const others = { "jump-1.csv": jumpText("both", 505), "jump-2.csv": jumpText("both", 507) };
const describing = (code: string, date: string) => ({ "session.json": JSON.stringify({ athlete: { code }, date }) });

let host: Host;
let batches: number;

beforeEach(() => {
  host = directHost(makeHandlers(new WorkspaceState(defaultSettings, "/nowhere"), "browser"));
  batches = 0;
});

/** Hands a folder in as a screen does, and ends the batch. */
async function drop(folder: string, files: Readonly<Record<string, string>>) {
  batches += 1;
  const batch = `batch ${batches}`;
  const taken = [];
  for (const [name, content] of Object.entries(files)) {
    const path = folder === "" ? name : `${folder}/${name}`;
    taken.push(await host.call("recordings.add", { path, bytes: bytesOf(content), batch }));
  }
  return { taken, ...(await host.call("recordings.endBatch", { batch })) };
}

async function sessions(): Promise<Readonly<Record<string, readonly string[]>>> {
  const { sessions } = await host.call("workspace.read", {});
  const found: Record<string, readonly string[]> = {};
  for (const { folder } of sessions) {
    const shown = await host.call("workspace.show", { folder });
    found[folder] = shown.recordings.map((view) => view.file);
  }
  return found;
}

const both = ["jump-1.csv", "jump-2.csv"];

describe("folders of one name", () => {
  test("stand beside each other where their recordings are not the same ones, and it is said", async () => {
    await drop("month-7", jumps);
    const { places } = await drop("month-7", others);
    expect(places).toEqual([
      {
        folder: "month-7",
        session: "month-7 (2)",
        message: expect.stringContaining("stands beside it as “month-7 (2)”"),
      },
    ]);
    expect(await sessions()).toEqual({ "month-7": both, "month-7 (2)": both });
  });

  test("stand beside each other where their session.json name different athletes, whatever their files are called", async () => {
    await drop("month-7", { ...describing("GH-07", "2026-10-14"), "a.csv": jumps["jump-1.csv"] });
    await drop("month-7", { ...describing("GH-08", "2026-10-14"), "b.csv": jumps["jump-2.csv"] });
    expect(await sessions()).toEqual({ "month-7": ["a.csv"], "month-7 (2)": ["b.csv"] });
  });

  test("stand beside each other where nothing shows that they are one", async () => {
    await drop("month-7", { "a.csv": jumps["jump-1.csv"] });
    await drop("month-7", { "b.csv": jumps["jump-2.csv"] });
    expect(await sessions()).toEqual({ "month-7": ["a.csv"], "month-7 (2)": ["b.csv"] });
  });

  test("become one session where some files are there already and none is another one", async () => {
    await drop("month-7", { "jump-1.csv": jumps["jump-1.csv"] });
    const { places } = await drop("month-7", jumps);
    expect(places).toEqual([{ folder: "month-7", session: "month-7", message: "" }]);
    expect(await sessions()).toEqual({ "month-7": both });
  });

  test("become one session where the same athlete and day are named", async () => {
    await drop("month-7", { ...describing("GH-07", "2026-10-14"), "a.csv": jumps["jump-1.csv"] });
    await drop("month-7", { ...describing("GH-07", "2026-10-14"), "b.csv": jumps["jump-2.csv"] });
    expect(await sessions()).toEqual({ "month-7": ["a.csv", "b.csv"] });
  });

  test("are recognised when they come a third time", async () => {
    await drop("month-7", jumps);
    await drop("month-7", others);
    const { places } = await drop("month-7", others);
    expect(places).toEqual([{ folder: "month-7", session: "month-7 (2)", message: "" }]);
    expect(Object.keys(await sessions())).toEqual(["month-7", "month-7 (2)"]);
  });

  test("keep what was decided meanwhile, although they would belong together", async () => {
    await drop("month-7", jumps);
    await host.call("recordings.add", { path: "month-7/jump-1.csv", bytes: bytesOf(jumps["jump-1.csv"]), batch: "x" });
    const answers = { test: "squatJump" } as const;
    await host.call("recordings.answer", { folder: "month-7 (2)", files: ["jump-1.csv"], answers });
    await host.call("recordings.endBatch", { batch: "x" });
    expect(Object.keys(await sessions())).toEqual(["month-7", "month-7 (2)"]);
  });
});

describe("loose recordings", () => {
  test("gather in one session as they come", async () => {
    await drop("", { "a.csv": jumps["jump-1.csv"] });
    await drop("", { "b.csv": jumps["jump-2.csv"] });
    expect(await sessions()).toEqual({ "": ["a.csv", "b.csv"] });
  });

  test("never take the place of others of the same name", async () => {
    await drop("", jumps);
    await drop("", others);
    expect(await sessions()).toEqual({ "": both, "Loose recordings (2)": both });
  });
});

describe("the same bytes", () => {
  test("are recognised in another session, and it is said where they are", async () => {
    await drop("month-6", jumps);
    const { taken } = await drop("month-7", { "copy.csv": jumps["jump-2.csv"] });
    expect(taken[0]).toMatchObject({ sameAs: ["month-6/jump-2.csv"] });
    expect(taken[0]?.message).toContain("The same recording is open as month-6/jump-2.csv.");
    const { recordings } = await host.call("workspace.show", { folder: "month-7" });
    expect(recordings.map((view) => view.sameAs)).toEqual([["month-6/jump-2.csv"]]);
  });

  test("count once within a session, at once when they come in", async () => {
    const { taken } = await drop("month-7", { ...jumps, "jump-3.csv": jumps["jump-1.csv"] });
    expect(taken.map((each) => each.outcome)).toEqual(["asks", "asks", "refused"]);
    expect(taken[2]?.message).toContain("the same recording as jump-1.csv");
  });
});
