import { describe, expect, test } from "vitest";
import type { Host } from "../../../electron/boundary/host-api.ts";
import type { WrittenRecord } from "../../../electron/boundary/record-requests.ts";
import type { Workspace } from "../../../electron/boundary/workspace-view.ts";
import { ownWorld } from "./host-world.ts";

/** One record of each kind a form writes, and how two windows change it: beside each other, and in the same place. */
const forms = [
  {
    kind: "athletes",
    content: { code: "A-1", name: "Ylva Brekke" },
    first: { code: "A-1", name: "Ylva Brekke", sport: "handball" },
    beside: { code: "A-1", name: "Ylva Brekke", level: "league" },
    both: { code: "A-1", name: "Ylva Brekke", sport: "handball", level: "league" },
    against: { code: "A-1", name: "Ylva Brekke", sport: "football" },
    asked: "sport: handball or football",
  },
  {
    kind: "injuries",
    content: { side: "left", structure: "cruciate ligament", date: "2026-01-17" },
    first: { side: "right", structure: "cruciate ligament", date: "2026-01-17" },
    beside: { side: "left", structure: "cruciate ligament", date: "2026-01-18" },
    both: { side: "right", structure: "cruciate ligament", date: "2026-01-18" },
    against: { side: "left", structure: "cruciate ligament", date: "2026-01-17", restrictions: "none" },
    asked: "",
  },
  {
    kind: "operations",
    content: { side: "left", procedure: "reconstruction", date: "2026-03-12", restrictions: "no landing" },
    first: { side: "left", procedure: "reconstruction", date: "2026-03-12" },
    beside: {
      side: "left",
      procedure: "reconstruction",
      date: "2026-03-12",
      restrictions: "no landing",
      graft: "hamstring",
    },
    both: { side: "left", procedure: "reconstruction", date: "2026-03-12", graft: "hamstring" },
    against: { side: "left", procedure: "reconstruction", date: "2026-03-12", restrictions: "no drop jumps" },
    asked: "restrictions: not stated or no drop jumps",
  },
  {
    kind: "consents",
    content: { reader: "coach", sheet: "all sheets", given: true, date: "2026-10-01" },
    first: { reader: "coach", sheet: "all sheets", given: false, date: "2026-10-01" },
    beside: { reader: "coach", sheet: "month 7", given: true, date: "2026-10-01" },
    both: { reader: "coach", sheet: "month 7", given: false, date: "2026-10-01" },
    against: { reader: "coach", sheet: "all sheets", given: true, date: "2026-10-02" },
    asked: "",
  },
] as const;

const conflictsOf = ({ conflict = [] }: Workspace) =>
  conflict.map(({ words, theirsWords, mineWords }) => `${words}: ${theirsWords} or ${mineWords}`).join("; ");

async function contentOf(host: Host, athlete: string, kind: WrittenRecord["kind"]): Promise<unknown> {
  const { page } = await host.call("athletes.page", { athlete });
  if (page === undefined) throw new Error("The athlete has no page.");
  return (kind === "athletes" ? page.athlete : page[kind][0])?.content;
}

describe("a record's form that began before another window kept the same record", () => {
  for (const { kind, content, first, beside, both, against, asked } of forms) {
    test(`of ${kind} changes its own fields alone, and asks where the same field was changed`, async () => {
      const { host, athlete } = await ownWorld();
      const id = kind === "athletes" ? athlete : crypto.randomUUID();
      const owner = kind === "athletes" ? {} : { athlete };
      const save = (now: object, before?: object) =>
        host.call("records.save", {
          record: { kind, id, ...owner, content: now } as WrittenRecord,
          ...(before && { before: before as WrittenRecord["content"] }),
        });
      await save(content);
      await save(first, content);
      expect(conflictsOf(await save(beside, content))).toBe("");
      expect(await contentOf(host, athlete, kind)).toEqual(both);
      const question = await save(against, content);
      expect(conflictsOf(question)).toBe(asked);
      if (asked === "") return;
      expect(await contentOf(host, athlete, kind)).toEqual(both);
      const [field] = question.conflict ?? [];
      const settled = [{ place: field?.place ?? "", theirs: field?.theirs ?? "", keep: "mine" as const }];
      const record = { kind, id, ...owner, content: against } as WrittenRecord;
      await host.call("records.save", { record, before: content, settled });
      expect(await contentOf(host, athlete, kind)).toMatchObject(against);
    });
  }

  test("of an athlete is refused where its new code was taken meanwhile, and nothing is changed", async () => {
    const { host, athlete } = await ownWorld();
    const add = { kind: "athletes", id: crypto.randomUUID(), content: { code: "B-2" } } as const;
    await host.call("records.save", { record: add });
    const record = { kind: "athletes", id: athlete, content: { code: "B-2" } } as const;
    await expect(host.call("records.save", { record, before: { code: "A-1" } })).rejects.toThrow("has the code B-2");
    expect(await contentOf(host, athlete, "athletes")).toMatchObject({ code: "A-1" });
  });
});

describe("notes about a session from two windows", () => {
  test("stand beside each other, condition by condition, and ask where both noted the same one", async () => {
    const { host, athlete } = await ownWorld();
    const session = crypto.randomUUID();
    await host.call("sessions.start", { session, athlete, plan: { date: "2026-11-02", conditions: { shoes: "own" } } });
    const before = { conditions: { shoes: "own" } };
    const note = (conditions: object) =>
      host.call("sessions.note", { session, notes: { conditions: { shoes: "own", ...conditions } }, before });
    await note({ surface: "wood" });
    expect(conflictsOf(await note({ arms: "on the hips" }))).toBe("");
    expect(conflictsOf(await note({ surface: "rubber" }))).toBe("conditions, surface: wood or rubber");
    const { page } = await host.call("athletes.page", { athlete });
    const { conditions } = page?.sessions[0]?.session.content ?? {};
    expect(conditions).toEqual({ shoes: "own", surface: "wood", arms: "on the hips" });
  });
});

describe("undo beside an athlete's record", () => {
  async function changedBoth() {
    const world = await ownWorld();
    const session = crypto.randomUUID();
    const plan = { date: "2026-11-02" };
    const { folder } = await world.host.call("sessions.start", { session, athlete: world.athlete, plan });
    await world.host.call("session.change", { folder, change: { massKg: 72 } });
    const content = { code: "A-9", name: "Ylva Brekke" };
    const record = { kind: "athletes", id: world.athlete, content } as const;
    return { ...world, session, folder, now: await world.host.call("records.save", { record }) };
  }

  test("names the athlete and asks first; unasked it changes nothing", async () => {
    const { host, folder, athlete, now } = await changedBoth();
    expect([now.undo, now.undoStep?.beyond]).toEqual(["Change athlete", "the record of athlete A-9"]);
    const step = now.undoStep?.step ?? 0;
    await expect(host.call("workspace.undo", { folder, step })).rejects.toThrow("changes more than the session shown");
    expect(await contentOf(host, athlete, "athletes")).toMatchObject({ code: "A-9" });
    const undone = await host.call("workspace.undo", { folder, step, agreed: true });
    expect([undone.stepped, undone.redoStep?.beyond]).toEqual([
      "Taken back: Change athlete.",
      "the record of athlete A-9",
    ]);
    expect(await contentOf(host, athlete, "athletes")).toMatchObject({ code: "A-1" });
    await expect(host.call("workspace.redo", { folder })).rejects.toThrow("changes more than the session shown");
  });

  test("can take back the session's own newest step and leave the athlete as the record is", async () => {
    const { host, folder, athlete, now } = await changedBoth();
    const { within } = now.undoStep ?? {};
    expect(within?.words).toBe("Change body mass");
    const undone = await host.call("workspace.undo", { folder, step: within?.step ?? 0 });
    expect(undone.session?.description).toMatchObject({ athlete: { code: "A-9" } });
    expect(undone.session?.description.massKg).toBeUndefined();
    expect(await contentOf(host, athlete, "athletes")).toMatchObject({ code: "A-9" });
    const redone = await host.call("workspace.redo", { folder });
    expect([redone.session?.description.massKg, redone.stepped]).toEqual([72, "Done again: Change body mass."]);
  });

  test("never touches a session that is not shown", async () => {
    const { host, folder, athlete } = await changedBoth();
    const other = crypto.randomUUID();
    const begun = await host.call("sessions.start", { session: other, athlete, plan: { date: "2026-11-03" } });
    await host.call("session.change", { folder: begun.folder, change: { massKg: 75 } });
    const back = await host.call("workspace.show", { folder });
    // the other session's own step is not offered here; what began it is, and says what it reaches
    expect([back.undo, back.undoStep?.beyond]).toEqual(["Begin session", "which sessions athlete A-9 has"]);
    const undone = await host.call("workspace.undo", { folder, step: back.undoStep?.within?.step ?? 0 });
    expect(undone.stepped).toBe("Taken back: Change body mass.");
    expect((await host.call("workspace.show", { folder: begun.folder })).session?.description.massKg).toBe(75);
  });

  test("takes an older step back field by field, and refuses where its field was changed since", async () => {
    const { host, home, athlete } = await ownWorld();
    const save = (content: { readonly code: string; readonly sport?: string; readonly level?: string }) =>
      home.register.writes.act("athlete changed", (changes) => changes.change("athletes", athlete, content));
    const count = home.register.writes.steps;
    const said = { code: "A-1", name: "Ylva Brekke" };
    save({ ...said, sport: "handball" });
    save({ ...said, sport: "handball", level: "league" });
    const [ofSport = 0, ofLevel = 0] = home.register.writes.stepsSince(count);
    home.register.writes.undo(ofSport);
    expect(await contentOf(host, athlete, "athletes")).toEqual({ ...said, level: "league" });
    save({ ...said, level: "second league" });
    expect(() => home.register.writes.undo(ofLevel)).toThrow("changed again since (level). Nothing was changed.");
    expect(await contentOf(host, athlete, "athletes")).toEqual({ ...said, level: "second league" });
    expect(home.register.verify().problems).toEqual([]);
  });
});
