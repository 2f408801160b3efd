import { rmSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { HostApi, HostRequestName } from "../../../electron/boundary/host-api.ts";
import { requestNames } from "../../../electron/boundary/request-names.ts";
import { handleRequest } from "../../../electron/handlers/handle-request.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { brokenSentence, wholeAfterReading, wholeRequests } from "../../../electron/handlers/whole-requests.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { Connection } from "../../../electron/register/connection.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { type HostWorld, ownWorld } from "./host-world.ts";

/** A mistake of our own, in the middle of a request. */
class Fault extends Error {}

type World = HostWorld & { readonly athlete: string };

/** Everything a person could see or lose: what is open, what can be taken back, and every row of the register. */
async function everything({ host, home }: World): Promise<string> {
  const { connection } = home.register;
  const tables = connection.all("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
  const rows = tables.map(({ name }) => connection.all(`SELECT * FROM ${String(name)}`));
  const open = home.workspace.sessions.map(({ folder, keptAs, files, stated }) => [
    folder,
    keptAs,
    stated,
    files.map(({ path, sha256 }) => [path, sha256]),
  ]);
  const { undo, redo, folder, unsaved } = await host.call("workspace.read", {});
  const list = home.register.reads.athletes();
  return JSON.stringify([rows, open, undo, redo, folder, unsaved, list, home.register.writes.steps], (_, value) =>
    value instanceof Uint8Array ? Buffer.from(value).toString("base64") : value,
  );
}

/** Has the nth write to the register end in a fault while some work is done. @returns whether it came so far */
async function faultedAt(nth: number, work: () => Promise<unknown>): Promise<boolean> {
  let writes = 0;
  const run = Connection.prototype.run;
  const spy = vi.spyOn(Connection.prototype, "run").mockImplementation(function (this: Connection, ...statement) {
    writes += 1;
    if (writes === nth) throw new Fault();
    run.apply(this, statement);
  });
  return faulted(work).finally(() => spy.mockRestore());
}

async function faulted(work: () => Promise<unknown>): Promise<boolean> {
  try {
    await work();
    return false;
  } catch (error) {
    if (error instanceof Fault) return true;
    throw error;
  }
}

const small = (newtons: number) => bytesOf(`time (s);left (N);right (N)\n${`0.001;${newtons}.5;340.5\n`.repeat(3)}`);
const place = "A-1/2026-11-02";
const answers = { test: "countermovementJump", limb: "both" } as const;

/** A register with a session of two recordings, one of them answered for; and a session in memory beside it. */
async function prepared(): Promise<World & { readonly session: string; readonly copy: string }> {
  const world = await ownWorld();
  const { host, athlete } = world;
  const session = crypto.randomUUID();
  await host.call("recordings.add", { path: "memory/a.csv", bytes: small(310) });
  await host.call("sessions.start", { session, athlete, plan: { date: "2026-11-02" } });
  await host.call("recordings.add", { path: `${place}/a.csv`, bytes: bytesOf(jumpText("both", 501)) });
  await host.call("recordings.add", { path: `${place}/b.csv`, bytes: small(320) });
  await host.call("recordings.answer", { folder: place, files: ["a.csv"], answers });
  await host.call("session.change", { folder: place, change: { note: "first" } });
  await host.call("workspace.undo", {});
  return { ...world, session, copy: goneCopy(world) };
}

/** The key of a copy elsewhere that was deleted. */
function goneCopy({ home }: World): string {
  const archive = `${temporaryFolder()}/gone.zip`;
  writeArchive(home.register, archive);
  rmSync(archive);
  return home.register.reads.records("copies").find(({ content }) => content.path === archive)?.id ?? "";
}

type Asked = {
  readonly [Name in HostRequestName]: readonly [Name, HostApi[Name]["request"]];
}[HostRequestName];

/** Requests of every kind that takes files in or changes something, each of them meeting what the one before left. */
function asked(
  { athlete, session, copy }: { readonly athlete: string; readonly session: string; readonly copy: string },
  archive: string,
): readonly Asked[] {
  return [
    ["workspace.redo", {}],
    ["workspace.undo", {}],
    ["workspace.show", { folder: "memory" }],
    ["recordings.add", { path: `${place}/c.csv`, bytes: small(330) }],
    ["recordings.add", { path: `${place}/c.csv`, bytes: small(331) }],
    ["recordings.add", { path: `${place}/d.csv`, bytes: bytesOf(jumpText("both", 501)), batch: "one" }],
    ["recordings.endBatch", { batch: "one" }],
    ["recordings.takeOut", { folder: place, files: ["b.csv", "c.csv"] }],
    ["recordings.takeOut", { folder: "memory", files: ["a.csv"] }],
    ["workspace.undo", {}],
    ["recordings.assign", { folder: place, rows: [{ file: "a.csv", trial: 1, limb: "left" }] }],
    ["recordings.answer", { folder: place, files: ["a.csv"], answers }],
    ["session.change", { folder: place, change: { note: "second" } }],
    ["session.change", { folder: "memory", change: { note: "second" } }],
    [
      "cautions.add",
      {
        folder: place,
        addition: { readings: [{ moment: "during", meant: "2026-11-02T10:20", by: "K. L.", pain: 2 }] },
      },
    ],
    ["trials.change", { folder: place, file: "a.csv", trial: 1, change: { seen: true } }],
    ["trials.statePlates", { folder: place, files: ["a.csv"], feet: "swap" }],
    ["records.save", { record: { kind: "athletes", id: athlete, content: { code: "A-2" } } }],
    ["sessions.note", { session, notes: { place: "hall" } }],
    ["sessions.start", { session: "0b5d9a9c-5f3c-4a52-9b7a-3f1f4f1d2c3e", athlete, plan: { date: "2026-11-03" } }],
    ["sessions.open", { session }],
    ["sessions.keep", { folder: "memory", athlete: { code: "A-7" } }],
    ["records.bin", { kind: "sessions", id: session }],
    ["records.takeOut", { kind: "sessions", id: session }],
    ["copies.forget", { key: copy }],
    ["archive.import", { place: archive }],
    ["workspace.clear", {}],
  ];
}

const nobody = { athlete: "", session: "", copy: "" };

describe("a request that ends in a fault of the program", () => {
  test("every request that is done as a whole is tried below", () => {
    const names = new Set<string>(asked(nobody, "").map(([name]) => name));
    expect([...names].toSorted()).toEqual([...wholeRequests, ...wholeAfterReading].toSorted());
  });

  test("leaves everything as it was, wherever in the register's writing or behind it the fault falls", async () => {
    const other = await ownWorld();
    const archive = `${temporaryFolder()}/other.zip`;
    writeArchive(other.home.register, archive);
    const world = await prepared();
    const { host, home } = world;
    const ask = ([name, request]: Asked): Promise<unknown> => host.call(name, request as never);
    for (const request of asked(world, archive)) {
      const [name] = request;
      const before = await everything(world);
      // These do not answer with the workspace, and need no reading of it.
      if (!["recordings.add", "recordings.endBatch", "archive.import"].includes(name)) {
        const behind = vi.spyOn(home.workspace, "read").mockImplementation(() => {
          throw new Fault();
        });
        expect(await faulted(() => ask(request)), name).toBe(true);
        behind.mockRestore();
        expect(await everything(world), `${name}, behind it`).toBe(before);
      }
      let nth = 1;
      while (await faultedAt(nth, () => ask(request))) {
        expect(await everything(world), `${name}, write ${nth}`).toBe(before);
        nth += 1;
      }
    }
    expect(home.register.verify().problems).toEqual([]);
  });
});

describe("the sentence for a fault", () => {
  test("says that nothing was changed exactly where that is so", () => {
    const saysSo = requestNames.filter((name) => brokenSentence(name).includes("nothing was changed"));
    expect([...wholeRequests, ...wholeAfterReading].filter((name) => !saysSo.includes(name))).toEqual([]);
    for (const name of ["workspace.openDemo", "register.setPassphrase", "backups.restore", "records.erase"] as const) {
      expect(brokenSentence(name)).toContain("Part of it may have been done");
    }
  });
});

test("in a host without a register too, what was open is as it was", async () => {
  const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
  const handlers = makeHandlers(workspace, "browser");
  const read = workspace.read.bind(workspace);
  workspace.add("a/a.csv", small(310));
  const before = JSON.stringify(read());
  vi.spyOn(workspace, "read").mockImplementationOnce(() => {
    throw new Fault();
  });
  const report = vi.fn();
  const outcome = await handleRequest(handlers, "recordings.takeOut", { folder: "a", files: ["a.csv"] }, report);
  expect(outcome).toMatchObject({ kind: "broken", message: expect.stringContaining("nothing was changed") });
  expect(report).toHaveBeenCalledOnce();
  expect(JSON.stringify(read())).toBe(before);
});
