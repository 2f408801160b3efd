import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { describe, expect, test } from "vitest";
import { temporaryFolder } from "../register/register-world.ts";
import { hostWorld, ownWorld, registerOf } from "./host-world.ts";

describe("a start", () => {
  test("without a register opens the demo world as a copy, closed to others", async () => {
    const { host, dataFolder: folder } = await hostWorld();
    const workspace = await host.call("workspace.read", {});
    expect(registerOf(workspace)).toMatchObject({ kind: "demo", hasOwn: false, locked: false });
    expect(workspace.demo).toBe(true);
    expect(workspace.session?.description.simulated).toBe(true);
    expect(workspace.keptAs).toBeDefined();
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(registerOf(workspace).file).mode & 0o777).toBe(0o600);
  });

  test("keeps what was done to the demo's copy; the person's own register throws the copy away and is opened next time", async () => {
    const first = await hostWorld();
    const { folder } = await first.host.call("workspace.read", {});
    await first.host.call("session.change", { folder, change: { note: "tried out" } });
    first.close();
    const second = await hostWorld({ dataFolder: first.dataFolder });
    const again = await second.host.call("workspace.read", {});
    expect(again.session?.description.note).toBe("tried out");
    const demoFile = registerOf(again).file;
    const own = await second.host.call("register.openOwn", {});
    expect(registerOf(own)).toMatchObject({ kind: "own", hasOwn: true });
    expect(own.sessions).toEqual([]);
    expect(existsSync(demoFile)).toBe(false);
    expect(statSync(registerOf(own).file).mode & 0o777).toBe(0o600);
    second.close();
    const third = await hostWorld({ dataFolder: first.dataFolder });
    expect(registerOf(await third.host.call("workspace.read", {})).kind).toBe("own");
  });

  test("opens the demo world anew as it was made, whatever was done to an earlier copy", async () => {
    const { host, dataFolder } = await hostWorld();
    const first = await host.call("workspace.read", {});
    await host.call("session.change", { folder: first.folder, change: { note: "tried out" } });
    const again = await host.call("workspace.openDemo", {});
    expect(again.session).toEqual(first.session);
    expect(statSync(registerOf(again).file).mode & 0o777).toBe(0o600);
    const names = readdirSync(dataFolder).filter((name) => name.includes("original"));
    expect(names).toEqual([expect.stringMatching(/^demo-original-[0-9a-f]{16}\.sqlite$/)]);
  });

  test("makes the day's backup of the person's own register", async () => {
    const { host } = await ownWorld();
    expect((await host.call("copies.read", {})).copies).toMatchObject([
      {
        kind: "kept daily",
        madeAt: expect.stringMatching(/^2026-11-02/),
        found: { extent: "structure", problems: [] },
      },
    ]);
  });

  test("where a file lies in the way of the backups' folder says what is wrong", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "register.sqlite-backups"), "in the way");
    const { host } = await hostWorld({ dataFolder: folder });
    const { kind, problem } = registerOf(await host.call("register.openOwn", {}));
    expect(kind).toBe("none");
    expect(problem).toContain("register.sqlite-backups");
  });

  test("in a place where no folder can be made goes on without a register and says why", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "file"), "in the way");
    const { host } = await hostWorld({ dataFolder: join(folder, "file", "data") });
    const workspace = await host.call("workspace.read", {});
    expect(registerOf(workspace).problem).toMatch(/^The folder of your data, .* cannot be used: /);
    expect([registerOf(workspace).kind, workspace.demo, workspace.sessions.length]).toEqual(["none", true, 1]);
  });

  test("of a second program on the same register reads only, says why, and changes nothing", async () => {
    const first = await ownWorld();
    const second = await hostWorld({ dataFolder: first.dataFolder });
    const why = "Another window or program has this register open, so it is open for reading only.";
    expect(registerOf(await second.host.call("workspace.read", {})).readOnlyBecause).toBe(why);
    const { athletes } = await second.host.call("athletes.list", { filter: {} });
    expect(athletes.map(({ code }) => code)).toEqual(["A-1"]);
    const record = { kind: "athletes", id: athletes[0]!.id, content: { code: "B-2" } } as const;
    await expect(second.host.call("records.save", { record })).rejects.toThrow(`${why} Nothing was changed.`);
  });

  test("on a damaged register says so in a sentence and touches nothing", async () => {
    const folder = temporaryFolder();
    const file = join(folder, "register.sqlite");
    const bytes = Buffer.from("this was a register once\n".repeat(400));
    writeFileSync(file, bytes, { mode: 0o600 });
    const { host } = await hostWorld({ dataFolder: folder });
    const { kind, problem } = registerOf(await host.call("workspace.read", {}));
    expect(kind).toBe("none");
    expect(problem).toMatch(/\.$/);
    await expect(host.call("athletes.list", { filter: {} })).rejects.toThrow(problem);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test("on a register of a newer program says so in a sentence and touches nothing", async () => {
    const first = await ownWorld();
    first.close();
    const file = join(first.dataFolder, "register.sqlite");
    const database = new DatabaseSync(file);
    database.exec("PRAGMA user_version = 99");
    database.close();
    const bytes = readFileSync(file);
    const second = await hostWorld({ dataFolder: first.dataFolder });
    const { kind, problem } = registerOf(await second.host.call("workspace.read", {}));
    expect(kind).toBe("none");
    expect(problem).toMatch(/newer/);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });
});
