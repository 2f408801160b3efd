import { describe, expect, test, vi } from "vitest";
import { handleRequest } from "../../../electron/handlers/handle-request.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { ownWorld } from "./host-world.ts";

/** A register with one athlete and one session, in which something can be changed, taken back and done again. */
async function worldAtWork() {
  const world = await ownWorld();
  const session = crypto.randomUUID();
  const { folder } = await world.host.call("sessions.start", {
    session,
    athlete: world.athlete,
    plan: { date: "2026-11-02" },
  });
  await world.host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 701)) });
  const answers = { test: "countermovementJump", limb: "both" } as const;
  await world.host.call("recordings.answer", { folder, files: ["a.csv"], answers });
  await world.host.call("session.change", { folder, change: { massKg: 71 } });
  await world.host.call("session.change", { folder, change: { milestone: "month 6" } });
  await world.host.call("workspace.undo", {});
  return { ...world, session, folder };
}

type World = Awaited<ReturnType<typeof worldAtWork>>;

/** Everything a person could notice: the workspace, the register's list and page, its journal and what verifying says. */
async function everything({ host, home, athlete }: World) {
  return {
    // Looking at a page puts the athlete among those opened last.
    page: await host.call("athletes.page", { athlete }),
    athletes: await host.call("athletes.list", { filter: {} }),
    workspace: await host.call("workspace.read", {}),
    bin: await host.call("bin.read", {}),
    journal: home.register.reads.journal(100),
    problems: home.register.verify().problems,
  };
}

const trial = { file: "a.csv", trial: 1 } as const;
const requests: readonly { readonly name: string; readonly request: (world: World) => object }[] = [
  { name: "workspace.undo", request: () => ({}) },
  { name: "workspace.redo", request: () => ({}) },
  { name: "session.change", request: ({ folder }) => ({ folder, change: { massKg: 76 } }) },
  {
    name: "cautions.add",
    request: ({ folder }) => ({
      folder,
      addition: { readings: [{ moment: "during", meant: "2026-11-02T10:20", by: "K. L.", pain: 6 }] },
    }),
  },
  { name: "trials.change", request: ({ folder }) => ({ folder, ...trial, change: { seen: true } }) },
  { name: "recordings.answer", request: ({ folder }) => ({ folder, files: ["a.csv"], answers: { limb: null } }) },
  {
    name: "records.save",
    request: ({ athlete }) => ({ record: { kind: "athletes", id: athlete, content: { code: "A-7" } } }),
  },
  { name: "sessions.note", request: ({ session }) => ({ session, notes: { place: "hall" } }) },
  {
    name: "sessions.start",
    request: ({ athlete }) => ({ session: crypto.randomUUID(), athlete, plan: { date: "2026-11-05" } }),
  },
  { name: "records.bin", request: ({ athlete }) => ({ kind: "athletes", id: athlete }) },
];

/** Faults of our own in the middle of a request: after everything was written, and wherever a session is read. */
const faults = {
  "while the reply is made": ({ home }: World) =>
    vi.spyOn(home.workspace, "read").mockImplementationOnce(() => {
      throw new Error("a fault while the reply is made");
    }),
  "while the changed session is read back": ({ home }: World) =>
    vi.spyOn(home.register.reads, "describedSession").mockImplementation(() => {
      throw new Error("a fault while reading back");
    }),
};

describe("requests in whose middle the program fails", () => {
  for (const [when, fail] of Object.entries(faults)) {
    test(`${when} answer that nothing was changed, and nothing was: not in memory, the register, its list or journal`, async () => {
      const world = await worldAtWork();
      const handlers = makeHandlers(world.home.workspace, "browser", world.home);
      const before = await everything(world);
      for (const { name, request } of requests) {
        const fault = fail(world);
        const reported: unknown[] = [];
        const outcome = await handleRequest(handlers, name, request(world), (error) => reported.push(error));
        expect([name, fault.mock.calls.length > 0, reported.length]).toEqual([name, true, 1]);
        fault.mockRestore();
        const message = "Something went wrong inside the program; nothing was changed.";
        expect([name, outcome]).toEqual([name, { kind: "broken", message }]);
        expect([name, await everything(world)]).toEqual([name, before]);
      }
      // And it goes on: the same requests are done when nothing fails.
      for (const { name, request } of requests) {
        const outcome = await handleRequest(handlers, name, request(world), (error) => expect(error).toBeUndefined());
        expect([name, outcome.kind]).toEqual([name, "done"]);
      }
    });
  }

  test("leave a session that lives in memory alone as it was, with its steps", async () => {
    const world = await worldAtWork();
    await world.host.call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 703)) });
    await world.host.call("session.change", { folder: "loose", change: { massKg: 71 } });
    const before = await world.host.call("workspace.show", { folder: "loose" });
    const handlers = makeHandlers(world.home.workspace, "browser", world.home);
    for (const [name, request] of [
      ["session.change", { folder: "loose", change: { massKg: 76 } }],
      ["workspace.undo", { folder: "loose" }],
    ] as const) {
      const fault = faults["while the reply is made"](world);
      expect((await handleRequest(handlers, name, request, () => undefined)).kind).toBe("broken");
      fault.mockRestore();
      expect(await world.host.call("workspace.read", {})).toEqual(before);
    }
  });
});
