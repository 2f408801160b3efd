import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { Host } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { directHost } from "./direct-host.ts";
import { bytesOf, jumpText } from "./simulated-recordings.ts";

const file = "countermovement-both-1.csv";
const other = "countermovement-both-2.csv";
const folder = "s";

/** A session in memory, and what two windows show of it that opened at the same moment. */
async function twoWindows(): Promise<{ readonly host: Host; readonly before: SessionDescription }> {
  const host = directHost(makeHandlers(new WorkspaceState(defaultSettings, "nowhere"), "browser"));
  for (const [name, seed] of [
    [file, 601],
    [other, 603],
  ] as const) {
    await host.call("recordings.add", { path: `${folder}/${name}`, bytes: bytesOf(jumpText("both", seed)) });
  }
  await host.call("recordings.answer", { folder, files: [file], answers: { test: "countermovementJump" } });
  await host.call("session.change", { folder, change: { massKg: 71, milestone: "month 6" } });
  return { host, before: descriptionOf(await host.call("workspace.read", {})) };
}

function descriptionOf({ session }: Workspace): SessionDescription {
  if (session === undefined) throw new Error("No session is open.");
  return session.description;
}

/** What the person chooses about every field in question. */
function choosing({ conflict = [] }: Workspace, keep: "mine" | "theirs") {
  return conflict.map(({ place, theirs }) => ({ place, theirs, keep }));
}

type Ask = (host: Host, before: SessionDescription) => Promise<Workspace>;

describe("a form that began before another window changed the session", () => {
  test("changes only its own fields; what the other changed beside them stays", async () => {
    const { host, before } = await twoWindows();
    await host.call("session.change", { folder, change: { massKg: 74, injury: "left knee" }, before });
    const kept = await host.call("session.change", { folder, change: { milestone: "month 7" }, before });
    expect(kept.conflict).toBeUndefined();
    expect(descriptionOf(kept)).toMatchObject({ massKg: 74, injury: "left knee", milestone: "month 7" });
    expect(kept.undo).toBe("Change milestone");
  });

  test("changes nothing where the same field was changed, and names field, the other's value and its own", async () => {
    const { host, before } = await twoWindows();
    await host.call("session.change", { folder, change: { massKg: 74 }, before });
    const change = { massKg: 72, milestone: "month 7" };
    const asked = await host.call("session.change", { folder, change, before });
    expect(asked.conflict).toEqual([
      { place: "massKg", words: "body mass", theirs: "74", theirsWords: "74 kg", mineWords: "72 kg" },
    ]);
    expect(descriptionOf(asked)).toMatchObject({ massKg: 74, milestone: "month 6" });
    expect(asked.undo).toBe("Change body mass");
    const theirs = await host.call("session.change", { folder, change, before, settled: choosing(asked, "theirs") });
    expect(descriptionOf(theirs)).toMatchObject({ massKg: 74, milestone: "month 7" });
    const mine = await host.call("session.change", { folder, change, before, settled: choosing(asked, "mine") });
    expect(descriptionOf(mine)).toMatchObject({ massKg: 72, milestone: "month 7" });
  });

  test("is asked again where the field changed once more while the person chose", async () => {
    const { host, before } = await twoWindows();
    await host.call("session.change", { folder, change: { massKg: 74 }, before });
    const asked = await host.call("session.change", { folder, change: { massKg: 72 }, before });
    await host.call("session.change", { folder, change: { massKg: 76 } });
    const settled = choosing(asked, "mine");
    const again = await host.call("session.change", { folder, change: { massKg: 72 }, before, settled });
    expect([again.conflict?.[0]?.theirsWords, descriptionOf(again).massKg]).toEqual(["76 kg", 76]);
  });

  test("is no conflict where both windows said the same", async () => {
    const { host, before } = await twoWindows();
    await host.call("session.change", { folder, change: { athlete: { code: "A-1", name: "Ylva Brekke" } }, before });
    const athlete = { name: "Ylva Brekke", code: "A-1" };
    expect((await host.call("session.change", { folder, change: { athlete }, before })).conflict).toBeUndefined();
  });
});

describe("what two windows say of the same recordings", () => {
  const takeoff = (time: number) => [{ name: "takeoff" as const, time }];
  const cases: readonly {
    readonly what: string;
    readonly first: Ask;
    readonly second: Ask;
    readonly conflict: readonly string[];
  }[] = [
    {
      what: "answers about different parts of one file",
      first: (ask, before) =>
        ask.call("recordings.answer", { folder, files: [file], answers: { limb: "left" }, before }),
      second: (ask, before) =>
        ask.call("recordings.answer", { folder, files: [file], answers: { swapPlates: true }, before }),
      conflict: [],
    },
    {
      what: "answers about the same part",
      first: (ask, before) =>
        ask.call("recordings.answer", { folder, files: [file], answers: { test: "squatJump" }, before }),
      second: (ask, before) =>
        ask.call("recordings.answer", { folder, files: [file], answers: { test: null }, before }),
      conflict: [`test of ${file}: squat jump or not stated`],
    },
    {
      what: "assignments of several rows, one of them assigned elsewhere",
      first: (ask, before) => ask.call("recordings.assign", { folder, rows: [{ file: other, limb: "left" }], before }),
      second: (ask, before) =>
        ask.call("recordings.assign", {
          folder,
          rows: [file, other].map((each) => ({ file: each, limb: "both" })),
          before,
        }),
      conflict: [`limb of ${other}: left or both`],
    },
    {
      what: "an exclusion and a mark of the same trial",
      first: (ask, before) =>
        ask.call("trials.change", { folder, file, trial: 1, change: { excluded: { reason: "slipped" } }, before }),
      second: (ask, before) => ask.call("trials.change", { folder, file, trial: 1, change: { seen: true }, before }),
      conflict: [],
    },
    {
      what: "two different events of the same trial",
      first: (ask, before) =>
        ask.call("trials.change", { folder, file, trial: 1, change: { events: takeoff(2.5) }, before }),
      second: (ask, before) =>
        ask.call("trials.change", {
          folder,
          file,
          trial: 1,
          change: { events: [{ name: "onset", time: 1.5 }] },
          before,
        }),
      conflict: [],
    },
    {
      what: "the same event of the same trial",
      first: (ask, before) =>
        ask.call("trials.change", { folder, file, trial: 1, change: { events: takeoff(2.5) }, before }),
      second: (ask, before) =>
        ask.call("trials.change", { folder, file, trial: 1, change: { events: takeoff(2.6) }, before }),
      conflict: [`take-off of ${file} trial 1: moved to 2.5000 s or moved to 2.6000 s`],
    },
    {
      what: "the feet on the plates of one file",
      first: (ask, before) => ask.call("trials.statePlates", { folder, files: [file], feet: "swap", before }),
      second: (ask, before) =>
        ask.call("trials.statePlates", { folder, files: [file], feet: [{ column: "left", foot: "left" }], before }),
      conflict: [`feet on the plates of ${file}: right foot on “left”; left foot on “right” or left foot on “left”`],
    },
  ];

  for (const { what, first, second, conflict } of cases) {
    test(`${what}: ${conflict.length === 0 ? "both stand" : "the person is asked, and the first stands meanwhile"}`, async () => {
      const { host, before } = await twoWindows();
      const alone = descriptionOf(await first(host, before));
      const both = await second(host, before);
      const asked = (both.conflict ?? []).map((each) => `${each.words}: ${each.theirsWords} or ${each.mineWords}`);
      expect(asked).toEqual(conflict);
      if (conflict.length > 0) expect(descriptionOf(both)).toEqual(alone);
      else expect(descriptionOf(both)).not.toEqual(alone);
    });
  }

  test("events that both windows moved stand in the order of the jump", async () => {
    const { host, before } = await twoWindows();
    const move = (events: readonly { readonly name: "onset" | "takeoff"; readonly time: number }[]) =>
      host.call("trials.change", { folder, file, trial: 1, change: { events }, before });
    await move(takeoff(2.5));
    const entries = descriptionOf(await move([{ name: "onset", time: 1.5 }])).files ?? [];
    expect(entries.find((each) => each.trial === 1)?.events).toEqual([
      { name: "onset", time: 1.5 },
      { name: "takeoff", time: 2.5 },
    ]);
  });
});
