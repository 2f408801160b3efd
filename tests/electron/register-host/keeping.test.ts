import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, onTestFinished, test, vi } from "vitest";
import { shippedProtocols } from "../../../core/protocol/shipped-protocols.ts";
import type { Host } from "../../../electron/boundary/host-api.ts";
import type { Workspace } from "../../../electron/boundary/workspace-view.ts";
import { writtenTime } from "../../../electron/cautions/add-cautions.ts";
import { sheetTexts } from "../../core/sheet/sheet-text.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { hostWorld, ownWorld } from "./host-world.ts";

const [protocol] = shippedProtocols;

async function startSession(host: Host, athlete: string, date = "2026-11-02") {
  const session = crypto.randomUUID();
  const workspace = await host.call("sessions.start", { session, athlete, plan: { date, protocol: protocol! } });
  return { session, workspace };
}

const answers = { test: "countermovementJump", limb: "both" } as const;

describe("a session of the register", () => {
  test("keeps recordings, answers and decisions for good: another start computes the same results", async () => {
    const first = await ownWorld();
    const { session, workspace } = await startSession(first.host, first.athlete);
    expect(workspace).toMatchObject({ folder: "A-1/2026-11-02", keptAs: session, unsaved: false });
    const { folder } = workspace;
    const bytes = bytesOf(jumpText("both", 501));
    await first.host.call("recordings.add", { path: `${folder}/a.csv`, bytes });
    await first.host.call("recordings.answer", { folder, files: ["a.csv"], answers });
    const decided = await first.host.call("trials.change", { folder, file: "a.csv", trial: 1, change: { seen: true } });
    expect(decided.unsaved).toBe(false);
    first.close();
    const second = await hostWorld({ dataFolder: first.dataFolder });
    const again = await second.host.call("sessions.open", { session });
    expect(again.session).toEqual(decided.session);
    expect(again.session?.trials[0]?.seen).toBe(true);
    expect(again.session?.description.protocol).toEqual(protocol);
  });

  test("undo and redo go through the journal and, agreed to, through athletes, and stay in step with it", async () => {
    const { host, home, athlete } = await ownWorld();
    const { session, workspace } = await startSession(host, athlete);
    const { folder } = workspace;
    await host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 503)) });
    await host.call("recordings.answer", { folder, files: ["a.csv"], answers });
    await host.call("records.save", { record: { kind: "athletes", id: athlete, content: { code: "A-9" } } });
    const changed = await host.call("workspace.read", {});
    expect(changed.session?.description.athlete).toEqual({ code: "A-9" });
    const seen: string[] = [];
    for (let workspaceNow = changed; workspaceNow.undo !== ""; ) {
      seen.push(workspaceNow.undo);
      workspaceNow = await host.call("workspace.undo", { agreed: true });
    }
    expect(seen).toEqual(["Change athlete", "Answer for a.csv", "Bring a.csv in", "Begin session", "Add athlete"]);
    expect(home.register.reads.athletes()).toEqual([]);
    expect((await host.call("workspace.read", {})).sessions).toEqual([]);
    let redone = await host.call("workspace.redo", { agreed: true });
    while (redone.redo !== "") {
      // The session that was begun again has steps of its own.
      if (redone.redo === "Change athlete") redone = await host.call("sessions.open", { session });
      redone = await host.call("workspace.redo", { agreed: true });
    }
    expect(home.register.reads.athletes().map(({ code }) => code)).toEqual(["A-9"]);
    expect(redone.undo).toBe("Change athlete");
    const actions = home.register.reads.journal(10).map(({ action }) => action);
    expect(actions).toEqual([...Array(5).fill("done again"), ...Array(5).fill("undone")]);
    expect(home.register.verify().problems).toEqual([]);
  });

  test("a copy taken elsewhere is no step: undo takes back what the person did before it", async () => {
    const { host, athlete } = await ownWorld();
    await startSession(host, athlete);
    expect((await host.call("archive.export", {})).records).toBeGreaterThan(0);
    const undone = await host.call("workspace.undo", { agreed: true });
    expect([undone.redo, undone.sessions]).toEqual(["Begin session", []]);
  });

  test("another recording of the same name takes its place with what was said; the earlier one lies in the bin", async () => {
    const { host, athlete } = await ownWorld();
    const { workspace } = await startSession(host, athlete);
    const { folder } = workspace;
    await host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 505)) });
    await host.call("recordings.answer", { folder, files: ["a.csv"], answers });
    await host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 507)) });
    const { session } = await host.call("workspace.read", {});
    expect(session?.trials.map(({ test }) => test)).toEqual(["countermovementJump"]);
    const { records } = await host.call("bin.read", {});
    expect(records.map(({ title }) => title)).toEqual(["Recording a.csv of 2026-11-02"]);
  });

  test("whose involved side follows from an injury goes on following it after other changes", async () => {
    const { host, athlete } = await ownWorld();
    const injury = crypto.randomUUID();
    const content = { side: "left", structure: "anterior cruciate ligament", date: "2026-01-17" } as const;
    await host.call("records.save", { record: { kind: "injuries", id: injury, athlete, content } });
    const { workspace } = await startSession(host, athlete);
    expect(workspace.session?.description.involved).toBe("left");
    await host.call("session.change", { folder: workspace.folder, change: { milestone: "month 6" } });
    const record = { kind: "injuries", id: injury, athlete, content: { ...content, side: "right" } } as const;
    expect((await host.call("records.save", { record })).session?.description.involved).toBe("right");
  });

  test("has a folder of its own whatever the athlete's code looks like", async () => {
    const { host } = await ownWorld();
    for (const [code, folder] of [
      ["a/b\\c", "a-b-c/2026-11-02"],
      ["..", "athlete/2026-11-02"],
    ]) {
      const athlete = crypto.randomUUID();
      await host.call("records.save", { record: { kind: "athletes", id: athlete, content: { code: code ?? "" } } });
      const { workspace } = await startSession(host, athlete);
      expect(workspace.folder).toBe(folder);
      const path = `${folder}/a.csv`;
      const taken = await host.call("recordings.add", { path, bytes: bytesOf(jumpText("both", 523)) });
      expect(taken.folder).toBe(folder);
    }
  });

  test("takes back a mark without leaving anything in the bin", async () => {
    const { host, athlete } = await ownWorld();
    const { workspace } = await startSession(host, athlete);
    const { folder } = workspace;
    await host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 525)) });
    await host.call("recordings.answer", { folder, files: ["a.csv"], answers });
    for (const seen of [true, false]) {
      await host.call("trials.change", { folder, file: "a.csv", trial: 1, change: { seen } });
    }
    expect((await host.call("bin.read", {})).records).toEqual([]);
  });

  test("refuses another athlete from the session's own form, because the athlete belongs to all sessions", async () => {
    const { host, athlete } = await ownWorld();
    const { workspace } = await startSession(host, athlete);
    const change = { athlete: { code: "X" } };
    await expect(host.call("session.change", { folder: workspace.folder, change })).rejects.toThrow("under Athletes");
    expect((await host.call("workspace.read", {})).session?.description.athlete?.code).toBe("A-1");
  });

  test("begins with the involved side and the answer about the day after the last one, which opens nothing", async () => {
    const { host, athlete } = await ownWorld();
    const plan = {
      date: "2026-11-02",
      involved: "left" as const,
      cautions: { response: { meant: "2026-11-02T09:00", by: "K. L.", note: "Pain rose. A little stiff." } },
    };
    const begun = await host.call("sessions.start", { session: crypto.randomUUID(), athlete, plan });
    const { session } = begun;
    expect(session?.description.involved).toBe("left");
    expect(session?.description.cautions?.answers).toMatchObject([
      { asked: "response", by: "K. L.", answers: {}, note: "Pain rose. A little stiff." },
    ]);
    expect(session?.gate.closures.map(({ code }) => code)).toContain("cautions-not-asked");
    const sheet = sheetTexts(await host.call("sheet.read", { folder: begun.folder })).join(" ");
    expect(sheet).toContain("Cautions: no record that they were asked");
    expect(sheet).toContain("No record that they were asked for jump testing.");
    expect(sheet).toContain("Asked about the day after the session before: K. L.");
  });

  test("is never of today's the one whose cautions are not known, and of a day before it is", async () => {
    const { host, athlete } = await ownWorld();
    const addition = { answers: { notKnown: true as const, by: "K. L." } };
    const today = await startSession(host, athlete, writtenTime(new Date()).slice(0, 10));
    const refused = host.call("cautions.add", { folder: today.workspace.folder, addition });
    await expect(refused).rejects.toThrow("Of today's session nobody can state");
    const before = await startSession(host, athlete, "2020-10-20");
    const lacking = ({ sessions }: Workspace) =>
      sessions.filter(({ lacksAnswers }) => lacksAnswers).map(({ folder }) => folder);
    expect(lacking(before.workspace)).toEqual(["A-1/2020-10-20"]);
    const stated = await host.call("cautions.add", { folder: before.workspace.folder, addition });
    expect(stated.session?.gate.answered.notKnown?.by).toBe("K. L.");
    expect(lacking(stated)).toEqual([]);
  });

  test("notes conditions beside what is there, and keeps answers and readings one after another", async () => {
    const { host, athlete } = await ownWorld();
    const { session, workspace } = await startSession(host, athlete);
    const { folder } = workspace;
    await host.call("sessions.note", { session, notes: { conditions: { arms: "on the hips" } } });
    const addition = (pain: number) => ({
      readings: [{ moment: "during" as const, meant: "2026-11-02T10:00", by: "K. L.", pain }],
    });
    await host.call("cautions.add", { folder, addition: addition(6) });
    const added = await host.call("cautions.add", { folder, addition: addition(1) });
    expect(added.session?.description.readings?.map(({ pain }) => pain)).toEqual([6, 1]);
    const undone = await host.call("workspace.undo", {});
    expect(undone.session?.description.readings?.map(({ pain }) => pain)).toEqual([6, 1]);
    const { page } = await host.call("athletes.page", { athlete });
    const { conditions, readings } = page!.sessions[0]!.session.content;
    expect([conditions, readings?.length]).toEqual([undefined, 2]);
  });
});

describe("recordings brought in as files", () => {
  test("come into the register with everything decided, for an athlete chosen or new", async () => {
    const { host, athlete } = await ownWorld();
    await host.call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 509)) });
    await host.call("recordings.answer", { folder: "loose", files: ["a.csv"], answers });
    const before = await host.call("trials.change", {
      folder: "loose",
      file: "a.csv",
      trial: 1,
      change: { excluded: { reason: "stepped" } },
    });
    expect([before.unsaved, before.keptAs]).toEqual([true, undefined]);
    const kept = await host.call("sessions.keep", { folder: "loose", athlete: { id: athlete } });
    expect(kept.unsaved).toBe(false);
    expect(kept.session?.trials[0]?.excluded).toEqual({ reason: "stepped" });
    expect(kept.session?.description.athlete).toEqual({ code: "A-1", name: "Ylva Brekke" });
    expect(kept.undo).toBe("Keep the session in the register");
    await host.call("recordings.add", { path: "other/a.csv", bytes: bytesOf(jumpText("both", 511)) });
    const taken = { folder: "other", athlete: { code: "A-1" } };
    await expect(host.call("sessions.keep", taken)).rejects.toThrow("choose it from the list");
    await host.call("sessions.keep", { folder: "other", athlete: { code: "A-2" } });
    const { athletes } = await host.call("athletes.list", { filter: {} });
    expect(athletes.map(({ code, sessions }) => [code, sessions])).toEqual([
      ["A-1", 1],
      ["A-2", 1],
    ]);
  });

  test("do not go into the demo's register, which can be thrown away", async () => {
    const { host } = await hostWorld();
    await host.call("recordings.add", { path: "loose/a.csv", bytes: bytesOf(jumpText("both", 513)) });
    const request = { folder: "loose", athlete: { code: "A-1" } };
    await expect(host.call("sessions.keep", request)).rejects.toThrow("Start your own register");
    const own = await host.call("register.openOwn", {});
    expect(own.sessions.map(({ folder }) => folder)).toEqual(["loose"]);
    expect((await host.call("sessions.keep", request)).keptAs).toBeDefined();
  });
});

describe("a folder watched during a session of the register", () => {
  test("fills that session, and the register with it", async () => {
    const folder = mkdtempSync(join(tmpdir(), "counterpoise-watched-"));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const { host, home, athlete } = await ownWorld();
    const { session, workspace } = await startSession(host, athlete);
    await host.call("watch.start", { folder });
    onTestFinished(() => void host.call("watch.stop", {}));
    writeFileSync(join(folder, "jump.csv"), jumpText("both", 515));
    await vi.waitFor(async () => expect((await host.call("watch.read", {})).taken).toBe(1), { timeout: 15_000 });
    const { newest } = await host.call("watch.read", {});
    expect(newest?.session).toBe(workspace.folder);
    expect(home.register.reads.describedSession(session)?.recordings.map(({ content }) => content.path)).toEqual([
      "jump.csv",
    ]);
  });

  test("is a session of its own where the session shown is of another day", async () => {
    const folder = mkdtempSync(join(tmpdir(), "counterpoise-watched-"));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const { host, athlete } = await ownWorld();
    const { workspace } = await startSession(host, athlete, "2026-10-01");
    writeFileSync(join(folder, "jump.csv"), jumpText("both", 517));
    await host.call("watch.start", { folder });
    onTestFinished(() => void host.call("watch.stop", {}));
    await vi.waitFor(async () => expect((await host.call("watch.read", {})).taken).toBe(1), { timeout: 15_000 });
    expect((await host.call("watch.read", {})).newest?.session).not.toBe(workspace.folder);
  });
});
