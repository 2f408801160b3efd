import { readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { Layout } from "../../../core/stated/layout.ts";
import type { Host } from "../../../electron/boundary/host-api.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { dataFolder } from "../../../electron/layouts/data-folder.ts";
import { LayoutShelf } from "../../../electron/layouts/layout-shelf.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { directHost } from "../direct-host.ts";
import { bytesOf, jumpText, temporaryFolder } from "../simulated-recordings.ts";

const ofColumns = (name: string, ...columns: readonly string[]): Layout => ({
  schemaVersion: 1,
  name,
  shape: {
    delimiter: "comma",
    decimalMark: "point",
    columns: columns.map((each) => ({ name: each, unit: "" })),
    headerKeys: [],
  },
  answers: { rateHz: 1000, unit: "N" },
});

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

describe("the shelf of saved layouts", () => {
  test("finds at the next start what was saved, each in a file that its owner alone may read", () => {
    new LayoutShelf(folder.path).save(ofColumns("Gym / left wall", "a", "b"));
    new LayoutShelf(folder.path).save(ofColumns("Gym \\ left wall", "a"));
    expect(new LayoutShelf(folder.path).layouts.map((each) => each.name)).toEqual([
      "Gym / left wall",
      "Gym \\ left wall",
    ]);
    const files = readdirSync(join(folder.path, "layouts"));
    expect(files).toHaveLength(2);
    // Windows knows no such bits; there the user's own folder keeps others out.
    const modes = files.map((name) => statSync(join(folder.path, "layouts", name)).mode & 0o777);
    if (process.platform !== "win32") expect(modes).toEqual([0o600, 0o600]);
  });

  test("keeps one answer for a shape and one shape for a name", () => {
    const shelf = new LayoutShelf(folder.path);
    shelf.save(ofColumns("gym", "a", "b"));
    expect(() => shelf.save(ofColumns("gym", "c"))).toThrow("files of another shape is called “gym” already");
    expect(() => shelf.save(ofColumns("hall", "a", "b"))).toThrow("have a saved layout already, “gym”");
    shelf.save({ ...ofColumns("gym", "a", "b"), answers: { rateHz: 500 } });
    expect(shelf.layouts.map((each) => each.answers)).toEqual([{ rateHz: 500 }]);
  });

  test("renames and removes, on the disk too", () => {
    const shelf = new LayoutShelf(folder.path);
    shelf.save(ofColumns("gym", "a"));
    shelf.save(ofColumns("hall", "b"));
    expect(() => shelf.rename("gym", "hall")).toThrow("Another saved layout is called “hall”.");
    shelf.rename("gym", "cellar");
    shelf.remove("hall");
    expect(shelf.layouts.map((each) => each.name)).toEqual(["cellar"]);
    expect(new LayoutShelf(folder.path).layouts).toEqual(shelf.layouts);
    expect(() => shelf.remove("hall")).toThrow("There is no saved layout “hall” any more.");
  });

  test("takes in what it gave out, and refuses what is no layout", () => {
    const shelf = new LayoutShelf(folder.path);
    shelf.save(ofColumns("gym", "a"));
    const text = shelf.textOf("gym");
    shelf.remove("gym");
    shelf.take(bytesOf(text));
    expect(shelf.layouts).toEqual([ofColumns("gym", "a")]);
    expect(() => shelf.take(bytesOf("{}"))).toThrow("not understood");
  });

  test("says which of its files cannot be used, and uses the others", () => {
    new LayoutShelf(folder.path).save(ofColumns("gym", "a"));
    writeFileSync(join(folder.path, "layouts", "broken.json"), "{");
    const shelf = new LayoutShelf(folder.path);
    expect(shelf.layouts).toHaveLength(1);
    expect(shelf.unusable).toEqual([{ file: "broken.json", reason: "The saved layout is no JSON." }]);
  });
});

test("data lie where the environment says, else where the platform keeps them", () => {
  const on = (platform: NodeJS.Platform, environment = {}) => dataFolder({ platform, environment, home: "/home/x" });
  expect(on("linux", { COUNTERPOISE_DATA: "/elsewhere" })).toBe("/elsewhere");
  expect(on("linux")).toBe(join("/home/x", ".local", "share", "counterpoise"));
  expect(on("linux", { XDG_DATA_HOME: "/data" })).toBe(join("/data", "counterpoise"));
  expect(on("darwin")).toBe(join("/home/x", "Library", "Application Support", "Counterpoise"));
  expect(on("win32", { LOCALAPPDATA: "C:\\Users\\x" })).toBe(join("C:\\Users\\x", "Counterpoise"));
});

describe("remembering in the application", () => {
  let host: Host;
  const nameless = (seed: number) => jumpText("both", seed).replace("time (s),left (N),right (N)", "t,one,two");
  const add = (path: string, text: string) => host.call("recordings.add", { path, bytes: bytesOf(text) });
  const outcomes = async () =>
    (await host.call("workspace.show", { folder: "day" })).recordings.map(({ file, outcome, reading }) => ({
      file,
      outcome,
      layout: reading?.kind === "delimited" ? reading.layout : undefined,
    }));
  beforeEach(async () => {
    host = directHost(
      makeHandlers(new WorkspaceState(defaultSettings, "/nowhere", new LayoutShelf(folder.path)), "browser"),
    );
    await add("day/countermovement-both-1.csv", nameless(601));
    await add("day/countermovement-both-2.csv", nameless(603));
    await add("day/countermovement-both-3.csv", nameless(605).replace("one", "three"));
  });

  const answers = { unit: "N", rateHz: 1000, columns: { time: 1, left: 2, right: 3 } } as const;
  const first = { folder: "day", file: "countermovement-both-1.csv" };

  test("answers for every file of the shape and for no other, and the reading names the layout", async () => {
    expect((await outcomes()).map((each) => each.outcome)).toEqual(["asks", "asks", "asks"]);
    await host.call("recordings.answer", { folder: "day", files: [first.file], answers });
    const { layouts } = await host.call("layouts.remember", { ...first, name: "gym" });
    expect(layouts).toMatchObject([{ name: "gym", answers: { ...answers.columns, unit: "N", platesStated: true } }]);
    expect((await outcomes()).slice(1)).toEqual([
      { file: "countermovement-both-2.csv", outcome: "understood", layout: "gym" },
      { file: "countermovement-both-3.csv", outcome: "asks", layout: undefined },
    ]);
  });

  test("ends when the layout is removed", async () => {
    await host.call("recordings.answer", { folder: "day", files: [first.file], answers });
    await host.call("layouts.remember", { ...first, name: "gym" });
    await host.call("layouts.remove", { name: "gym" });
    expect((await outcomes()).map((each) => each.outcome)).toEqual(["understood", "asks", "asks"]);
  });

  test("is refused where nothing was answered that other files would need", async () => {
    await host.call("recordings.answer", { folder: "day", files: [first.file], answers: { test: "squatJump" } });
    await expect(host.call("layouts.remember", { ...first, name: "gym" })).rejects.toThrow("Nothing was stated about");
  });
});
