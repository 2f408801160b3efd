import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { SessionResult } from "../../../core/result/session-result.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";
import type { Host } from "../../../electron/boundary/host-api.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { directHost } from "../direct-host.ts";
import { bytesOf, describedSession, jumpText, sessionFiles, temporaryFolder } from "../simulated-recordings.ts";

let demo: ReturnType<typeof temporaryFolder>;
let workspace: WorkspaceState;
let host: Host;

beforeAll(() => {
  demo = temporaryFolder();
  demo.write(describedSession(), "maren/month-7");
  demo.write({ "countermovement-both-1.csv": jumpText("both", 201), "README.md": "simulated" }, "bad");
});

afterAll(() => demo.remove());

beforeEach(() => {
  workspace = new WorkspaceState(defaultSettings, demo.path);
  host = directHost(makeHandlers(workspace, "browser"));
});

const month7 = "maren/month-7";
const both2 = "countermovement-both-2.csv";

async function importSession(folder: string, files: Readonly<Record<string, string>> = describedSession()) {
  for (const [name, content] of Object.entries(files)) {
    await host.call("recordings.add", { path: folder === "" ? name : `${folder}/${name}`, bytes: bytesOf(content) });
  }
}

function trialOf(session: SessionResult | undefined, file: string): TrialResult {
  const trial = session?.trials.find((each) => each.file === file);
  if (trial === undefined) throw new Error(`No trial of ${file}.`);
  return trial;
}

const heightOf = (trial: TrialResult) => trial.measures.find((each) => each.id === "jumpHeightImpulse")?.value;

describe("opening", () => {
  test("nothing is open at first, and the demo opens with its sessions named and one shown", async () => {
    expect(await host.call("workspace.read", {})).toEqual({
      demo: false,
      sessions: [],
      folder: "",
      recordings: [],
      undo: "",
      redo: "",
      effect: "",
      unsaved: false,
      layouts: [],
      unusableLayouts: [],
    });
    const opened = await host.call("workspace.openDemo", {});
    expect(opened.demo).toBe(true);
    expect(opened.sessions).toEqual([
      { folder: month7, title: "Maren Tveitlund", subtitle: "month 7, 2026-10-14" },
      { folder: "bad", title: "bad", subtitle: "1 recording" },
    ]);
    expect(opened.folder).toBe(month7);
    expect(opened.session?.trials.map((trial) => trial.status)).toEqual(Array(9).fill("analysed"));
    expect(opened.recordings.map((each) => [each.file, each.outcome, each.trials])).toEqual(
      Object.keys(sessionFiles).map((file) => [file, "understood", 1]),
    );
  });

  test("a person's own recording closes the demo world, so that simulated and real never mix", async () => {
    await host.call("workspace.openDemo", {});
    await host.call("recordings.add", { path: "mine/jump.csv", bytes: bytesOf(jumpText("both", 301)) });
    const now = await host.call("workspace.read", {});
    expect([now.demo, now.sessions.map((each) => each.folder), now.folder]).toEqual([false, ["mine"], "mine"]);
  });

  test("a session that is not open cannot be shown, and the one shown stays", async () => {
    await host.call("workspace.openDemo", {});
    await expect(host.call("workspace.show", { folder: "gone" })).rejects.toThrow("not open");
    expect((await host.call("workspace.show", { folder: "bad" })).folder).toBe("bad");
  });
});

describe("taking recordings in", () => {
  test("files fall into the session of their folder, and session.json describes it", async () => {
    await importSession("a");
    await importSession("", { "loose.csv": jumpText("both", 303) });
    const now = await host.call("workspace.read", {});
    expect(now.sessions.map((each) => [each.folder, each.title])).toEqual([
      ["a", "Maren Tveitlund"],
      ["", "Loose recordings"],
    ]);
    expect(now.session?.description.involved).toBe("right");
  });

  test("each file is answered for: understood, asking, refused, or a description", async () => {
    const add = (path: string, content: string) => host.call("recordings.add", { path, bytes: bytesOf(content) });
    expect((await add("countermovement-both-1.csv", jumpText("both", 305))).outcome).toBe("understood");
    const asks = await add("one-column.txt", "700\n".repeat(3000));
    expect(asks.outcome).toBe("asks");
    expect((await add("names.txt", "time (s);left (N)\n")).outcome).toBe("refused");
    expect((await add("letter.txt", "Dear colleague,\nthank you.\n")).outcome).toBe("left aside");
    expect((await add("README.md", "# notes")).outcome).toBe("left aside");
    expect((await add("session.json", '{"involved":"left"}')).outcome).toBe("session");
    const now = await host.call("workspace.read", {});
    expect(now.recordings.map((each) => each.file)).toEqual([
      "countermovement-both-1.csv",
      "names.txt",
      "one-column.txt",
    ]);
    expect(asks.message).not.toBe("");
  });

  test("what a file asked for can be answered, and then it is analysed", async () => {
    const withoutHeader = jumpText("both", 307)
      .split("\n")
      .slice(1)
      .map((line) => line.split(",")[1])
      .join("\n");
    await importSession("", { "jump.txt": withoutHeader });
    const asked = await host.call("workspace.read", {});
    expect(asked.recordings[0]?.outcome).toBe("asks");
    const answered = await host.call("recordings.answer", {
      folder: "",
      files: ["jump.txt"],
      answers: { rateHz: 1000, unit: "N", test: "countermovementJump", limb: "left", columns: { left: 1 } },
    });
    expect(answered.recordings[0]?.outcome).toBe("understood");
    expect(answered.session?.trials[0]?.rate).toBe(1000);
    expect(answered.undo).toBe("Answer for jump.txt");
  });

  test("the preview shows the lines as they stand, and marks what cannot be printed", async () => {
    await importSession("", { "jump.csv": jumpText("both", 309), "binary.dat": "\u0000\u0001\u0002\nabc" });
    const lines = async (name: string, first: number) =>
      host.call("recordings.lines", { folder: "", file: name, first, count: 2 });
    expect((await lines("jump.csv", 1)).lines[0]).toBe("time (s),left (N),right (N)");
    const { lines: later, total } = await lines("jump.csv", 1000);
    expect(later.map((line) => line.split(",")[0])).toEqual(["0.998", "0.999"]);
    expect(total).toBeGreaterThan(1000);
    expect(await lines("binary.dat", 1)).toEqual({ first: 1, lines: ["\ufffd\ufffd\ufffd", "abc"], total: 2 });
  });

  test("the preview draws the force as understood, and follows an answer", async () => {
    await importSession("", { "jump-both.csv": jumpText("both", 309) });
    const place = { folder: "", file: "jump-both.csv" };
    const limbs = async () =>
      (await host.call("recordings.outline", place)).outline?.plates.map(({ name, limb }) => `${name} ${limb}`);
    expect(await limbs()).toEqual(["left left", "right right"]);
    await host.call("recordings.answer", { folder: "", files: [place.file], answers: { swapPlates: true } });
    expect(await limbs()).toEqual(["left right", "right left"]);
    await host.call("workspace.undo", {});
    expect(await limbs()).toEqual(["left left", "right right"]);
  });

  test("a file of the same name takes the other's place and says so", async () => {
    const add = (text: string) => host.call("recordings.add", { path: both2, bytes: bytesOf(text) });
    const first = await add(jumpText("both", 311));
    expect((await add(jumpText("both", 311))).message).toBe(first.message);
    expect((await add(jumpText("both", 313))).message).toMatch(/took the place/);
    expect((await host.call("workspace.read", {})).recordings).toHaveLength(1);
  });
});

describe("deciding", () => {
  beforeEach(async () => {
    await host.call("workspace.openDemo", {});
  });

  const change = (trial: TrialResult, edit: Parameters<typeof changeRequest>[1]) =>
    host.call("trials.change", changeRequest(trial, edit));

  test("moving take-off changes the numbers, and undo brings them back to the last bit", async () => {
    const before = trialOf((await host.call("workspace.read", {})).session, both2);
    const takeoff = before.events.find((event) => event.name === "takeoff" && event.side === undefined);
    const moved = await change(before, { events: [{ name: "takeoff", time: (takeoff?.time ?? 0) + 0.005 }] });
    expect(moved.undo).toBe(`Move take-off, ${both2} trial 1`);
    const after = trialOf(moved.session, both2);
    expect(heightOf(after)).not.toBe(heightOf(before));
    expect(after.events.find((event) => event.name === "takeoff" && event.side === undefined)?.from).toBe("edited");
    const undone = await host.call("workspace.undo", {});
    expect(trialOf(undone.session, both2)).toEqual(before);
    expect([undone.undo, undone.redo]).toEqual(["", `Move take-off, ${both2} trial 1`]);
    const redone = await host.call("workspace.redo", {});
    expect(trialOf(redone.session, both2)).toEqual(after);
  });

  test("an excluded trial no longer counts, and the reason stands with it", async () => {
    const before = await host.call("workspace.read", {});
    const left = trialOf(before.session, "countermovement-left-1.csv");
    const after = await change(left, { excluded: { reason: "touched the rail" } });
    expect(trialOf(after.session, left.file).excluded).toEqual({ reason: "touched the rail" });
    const countOf = (session: SessionResult | undefined) =>
      session?.comparisons.find((each) => each.legs === "single" && each.measure === "jumpHeightImpulse")?.second.values
        .length;
    expect([countOf(before.session), countOf(after.session)]).toEqual([3, 2]);
    expect((await change(left, { excluded: null })).session).toEqual(before.session);
  });

  test("only the session that was edited is analysed again", async () => {
    const bad = workspace.analysis("bad");
    const seven = workspace.analysis(month7);
    await change(trialOf(seven.result, both2), { seen: true });
    expect(workspace.analysis("bad") === bad).toBe(true);
    const again = workspace.analysis(month7);
    expect(again === seven).toBe(false);
    expect(workspace.analysis(month7) === again).toBe(true);
  });

  test("a change that changes nothing is no step to take back", async () => {
    const trial = trialOf((await host.call("workspace.read", {})).session, both2);
    expect((await change(trial, { seen: false })).undo).toBe("");
    expect((await host.call("session.change", { folder: month7, change: { involved: "right" } })).undo).toBe("");
  });

  test("undo stays inside the session shown and says what it took back", async () => {
    await host.call("session.change", { folder: month7, change: { massKg: 75 } });
    const elsewhere = await host.call("workspace.show", { folder: "bad" });
    expect([elsewhere.undo, elsewhere.undoStep]).toEqual(["", undefined]);
    await host.call("session.change", { folder: "bad", change: { massKg: 72 } });
    const undone = await host.call("workspace.undo", {});
    expect([undone.folder, undone.stepped, undone.session?.description.massKg]).toEqual([
      "bad",
      "Taken back: Change body mass.",
      undefined,
    ]);
    const nothing = await host.call("workspace.undo", {});
    expect([nothing.folder, nothing.undo]).toEqual(["bad", ""]);
    const back = await host.call("workspace.show", { folder: month7 });
    expect([back.session?.description.massKg, back.undo]).toEqual([75, "Change body mass"]);
    // A window that still shows the other session means the step of that one.
    const named = await host.call("workspace.redo", { folder: "bad", step: undone.redoStep?.step ?? 0 });
    expect([named.folder, named.stepped, named.session?.description.massKg]).toEqual([
      "bad",
      "Done again: Change body mass.",
      72,
    ]);
    expect((await host.call("session.change", { folder: "bad", change: { massKg: 73 } })).stepped).toBeUndefined();
  });

  test("undo takes the step the screen offered, or nothing where another was done meanwhile", async () => {
    const shown = await host.call("session.change", { folder: month7, change: { massKg: 75 } });
    await host.call("session.change", { folder: month7, change: { milestone: "month 8" } });
    const stale = host.call("workspace.undo", { folder: month7, step: shown.undoStep?.step ?? 0 });
    await expect(stale).rejects.toThrow("now the newest step is “Change milestone”. Nothing was changed.");
    const { description } = (await host.call("workspace.read", {})).session ?? {};
    expect([description?.massKg, description?.milestone]).toEqual([75, "month 8"]);
  });

  test("pain above the limit closes the gate, and neither undo nor a milder reading opens it again", async () => {
    const reading = (pain: number) => ({
      readings: [{ moment: "during" as const, meant: "2026-10-14T10:20", by: "K. L.", pain }],
    });
    await host.call("session.change", { folder: month7, change: { milestone: "month 8" } });
    const closed = await host.call("cautions.add", { folder: month7, addition: reading(6) });
    expect(closed.session?.gate.open).toBe(false);
    const milder = await host.call("cautions.add", { folder: month7, addition: reading(1) });
    expect(milder.session?.gate.reason).toContain("Pain 6 of 10");
    const undone = await host.call("workspace.undo", {});
    expect(undone.session?.description.milestone).toBe("month 7");
    expect(undone.session?.gate.open).toBe(false);
  });

  test("reading session.json again is a step that can be taken back", async () => {
    workspace.clear();
    await importSession("a");
    await host.call("session.change", { folder: "a", change: { milestone: "month 6" } });
    await host.call("recordings.add", { path: "a/session.json", bytes: bytesOf('{"involved":"left"}') });
    expect((await host.call("workspace.read", {})).undo).toBe("Read a/session.json");
    expect((await host.call("workspace.undo", {})).session?.description.milestone).toBe("month 6");
  });

  test("trials, files and sessions that are not there are refused with a sentence", async () => {
    const place = { folder: month7, file: both2, trial: 1 };
    await expect(host.call("trials.trace", { ...place, trial: 9 })).rejects.toThrow(`${both2} has no trial 9.`);
    await expect(host.call("trials.trace", { ...place, file: "x.csv" })).rejects.toThrow("x.csv is not among");
    await expect(host.call("trials.change", { ...place, folder: "x", change: {} })).rejects.toThrow("not open");
  });
});

describe("drawing and making files", () => {
  beforeEach(async () => {
    await host.call("workspace.openDemo", {});
  });

  test("a trial's curves span the trial, one value a sample", async () => {
    const trace = await host.call("trials.trace", { folder: month7, file: both2, trial: 1 });
    expect(trace.plates.map((plate) => plate.name)).toHaveLength(2);
    for (const curve of [trace.filtered, trace.velocity, trace.displacement, trace.power]) {
      expect(curve.length).toBe(trace.total.length);
    }
  });

  test("a file that is no table has nothing to draw and says so", async () => {
    await importSession("", { "letter.txt": "time (s);left (N)\n" });
    await expect(host.call("trials.trace", { folder: "", file: "letter.txt", trial: 1 })).rejects.toThrow(
      "no force to draw",
    );
  });

  test("sides can be laid over each other, and a test nobody did has no overlay", async () => {
    const request = { folder: month7, legs: "single", alignedAt: "takeoff" } as const;
    const { overlay } = await host.call("sides.curves", { ...request, test: "countermovementJump" });
    expect([overlay?.first.side, overlay?.first.curves.length, overlay?.second.curves.length]).toEqual(["right", 3, 3]);
    expect(await host.call("sides.curves", { ...request, test: "dropJump" })).toEqual({});
  });

  test("session.json with all decisions reads back to the same description without a complaint", async () => {
    await host.call("trials.change", {
      folder: month7,
      file: both2,
      trial: 1,
      change: { excluded: { reason: "slipped" }, seen: true, events: [{ name: "takeoff", time: 2.9 }] },
    });
    const made = await host.call("files.make", { folder: month7, format: "session" });
    expect([made.name, made.mediaType]).toEqual(["session.json", "application/json"]);
    const back = parseSessionFile(made.bytes);
    expect(back.findings).toEqual([]);
    expect(back.description).toEqual(workspace.analysis(month7).result.description);
  });

  test("files carry the athlete's code and date, never the name", async () => {
    const names = [];
    for (const format of ["json", "csv", "html", "pdf"] as const) {
      const made = await host.call("files.make", { folder: month7, format });
      expect(made.bytes.byteLength).toBeGreaterThan(500);
      names.push(made.name);
    }
    expect(names).toEqual([
      "GH-07-2026-10-14-results.json",
      "GH-07-2026-10-14-results.csv",
      "GH-07-2026-10-14-sheet.html",
      "GH-07-2026-10-14-sheet.pdf",
    ]);
  });
});

function changeRequest(
  trial: TrialResult,
  edit: Parameters<typeof host.call<"trials.change">>[1]["change"],
): Parameters<typeof host.call<"trials.change">>[1] {
  return { folder: month7, file: trial.file, trial: trial.trial, change: edit };
}

describe("decisions that could be lost", () => {
  const change = { folder: "s", file: both2, trial: 1 };

  test("are unsaved from the first one until they are taken along as session.json, and never in the demo", async () => {
    await importSession("s");
    expect((await host.call("workspace.read", {})).unsaved).toBe(false);
    const decided = await host.call("trials.change", { ...change, change: { excluded: { reason: "slipped" } } });
    expect(decided.unsaved).toBe(true);
    await host.call("files.make", { folder: "s", format: "session" });
    expect((await host.call("workspace.read", {})).unsaved).toBe(false);
    expect((await host.call("workspace.undo", {})).unsaved).toBe(true);
    await host.call("workspace.openDemo", {});
    const seen = await host.call("trials.change", { ...change, folder: month7, change: { seen: true } });
    expect(seen.unsaved).toBe(false);
  });
});
