import { appendFileSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { WatchView } from "../../../electron/boundary/watch-view.ts";
import { SessionWatch } from "../../../electron/watch/session-watch.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { jumpText, temporaryFolder } from "../simulated-recordings.ts";

/** How long a screen may take to know of a jump. */
const promisedMilliseconds = 2000;

const ends: (() => void)[] = [];

const complain = (error: unknown): never => {
  throw error;
};

afterEach(() => {
  for (const end of ends.splice(0)) end();
});

function watched() {
  const folder = temporaryFolder();
  const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
  const watch = new SessionWatch(workspace, { report: complain });
  watch.start(folder.path);
  ends.push(() => {
    watch.stop();
    folder.remove();
  });
  return { path: folder.path, session: basename(folder.path), workspace, watch };
}

async function until(watch: SessionWatch, holds: (view: WatchView) => boolean): Promise<WatchView> {
  const started = performance.now();
  for (;;) {
    const view = watch.read();
    if (holds(view)) return view;
    if (performance.now() - started > 20_000) throw new Error(`It never came: ${JSON.stringify(view)}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

describe("watching a folder during a session", () => {
  test("a jump that appears is in the workspace with its verdict, and the protocol says what is missing", async () => {
    const { path, session, workspace, watch } = watched();
    watch.expect({ test: "countermovementJump", limb: "both" });
    writeFileSync(join(path, "jump.csv"), jumpText("both", 201));
    const written = performance.now();
    const view = await until(watch, ({ newest }) => newest !== undefined);
    // The promise is for the screen on an idle machine; ten times as long is allowed where tests share one.
    expect(performance.now() - written).toBeLessThan(10 * promisedMilliseconds);
    expect(view.newest).toMatchObject({
      session,
      file: "jump.csv",
      problem: "",
      trials: [{ trial: 1, test: "countermovementJump", limb: "both", counts: false, waits: true }],
    });
    expect(view.newest?.trials[0]?.measures.some((each) => each.id === "jumpHeightImpulse")).toBe(true);
    expect(view.progress).toBeUndefined();
    const protocol = shippedProtocol("return-to-running");
    if (protocol === undefined) throw new Error("the protocol ships");
    workspace.changeSession(session, { protocol });
    // On two plates it waits for the feet, which the board asks for with one click.
    expect(watch.read().progress?.lines).toEqual(["Countermovement jump: 0 of 4 (1 waits for an answer)."]);
    const states = watch.read().questions?.[0]?.likely[0]?.states;
    if (states?.kind !== "feet") throw new Error("the feet are asked for");
    workspace.statePlates(session, states.files, states.feet);
    expect(watch.read()).toMatchObject({ questions: [], newest: { trials: [{ counts: true, waits: false }] } });
    expect(watch.read().progress).toMatchObject({
      lines: ["Countermovement jump: 1 of 4."],
      done: "",
    });
    // Other people read the board: it says that something is to be asked, and nothing of what was answered.
    expect(watch.read()).toMatchObject({ cautions: { session, due: ["session"], closed: false } });
    expect(JSON.stringify(watch.read())).not.toContain("not answered");
  });

  test("what nobody said is asked for, with what the trace looks like", async () => {
    const { path, watch } = watched();
    writeFileSync(join(path, "x.csv"), jumpText("both", 203));
    const view = await until(watch, ({ newest }) => newest !== undefined);
    expect(view.newest?.trials).toMatchObject([
      { counts: false, looksLike: { test: "countermovementJump" }, reason: expect.stringContaining("test") },
    ]);
  });

  test("a file that is still being written is waited for, and one that grows later is taken again", async () => {
    const { path, session, workspace, watch } = watched();
    watch.expect({ test: "countermovementJump", limb: "both" });
    const whole = jumpText("both", 205);
    const half = whole.indexOf("\n", whole.length / 2) + 1;
    const file = join(path, "slow.csv");
    const writing = setInterval(() => appendFileSync(file, "\n"), 50);
    writeFileSync(file, whole.slice(0, half));
    await until(watch, (view) => view.writing.includes("slow.csv"));
    expect(watch.read().taken).toBe(0);
    clearInterval(writing);
    await until(watch, (view) => view.taken === 1);
    writeFileSync(file, whole);
    const view = await until(watch, (each) => each.taken === 2);
    expect(view.newest?.trials).toMatchObject([{ test: "countermovementJump", waits: true }]);
    expect(workspace.analysis(session).result.trials).toHaveLength(1);
  });

  test("recordings that are said to be practice are landings and no attempts, until that is taken back", async () => {
    const { path, session, workspace, watch } = watched();
    watch.expect({ test: "countermovementJump", limb: "right", practice: true });
    writeFileSync(join(path, "jump-1.csv"), jumpText("right", 241));
    const practised = await until(watch, (view) => view.taken === 1);
    expect(practised.newest?.trials).toMatchObject([{ practice: true, counts: false, waits: false }]);
    watch.expect({ test: "countermovementJump", limb: "right" });
    writeFileSync(join(path, "jump-2.csv"), jumpText("right", 243));
    const counted = await until(watch, (view) => view.taken === 2);
    expect(counted.newest?.trials).toMatchObject([{ practice: false, counts: true }]);
    const protocol = shippedProtocol("return-to-pivoting-sport");
    if (protocol === undefined) throw new Error("the protocol ships");
    workspace.changeSession(session, { protocol, involved: "left" });
    expect(watch.read().progress).toMatchObject({
      lines: expect.arrayContaining(["Single-leg countermovement jump: right 1 of 4 (1 practice jump), left 0 of 4."]),
      landings: "Landings of this session: two-leg 0 of 30, right leg 2 of 26, left leg 0 of 26.",
    });
    workspace.assign(session, [{ file: "jump-1.csv", practice: null }]);
    expect(watch.read().progress?.lines).toContain("Single-leg countermovement jump: right 2 of 4, left 0 of 4.");
  });

  test("a folder that disappears is said, keeps what was taken, and goes on when it is back", async () => {
    const { path, session, workspace, watch } = watched();
    watch.expect({ test: "countermovementJump", limb: "both" });
    writeFileSync(join(path, "first.csv"), jumpText("both", 207));
    await until(watch, (view) => view.taken === 1);
    renameSync(path, `${path}-away`);
    ends.push(() => rmSync(`${path}-away`, { recursive: true, force: true }));
    await until(watch, (view) => view.state === "unreachable");
    expect(workspace.analysis(session).result.trials).toHaveLength(1);
    renameSync(`${path}-away`, path);
    writeFileSync(join(path, "second.csv"), jumpText("both", 209));
    const view = await until(watch, (each) => each.taken === 2);
    expect(view.state).toBe("watching");
    expect(view.newest?.file).toBe("second.csv");
  });

  test("the same bytes under another name count once, and a session.json describes the session", async () => {
    const { path, session, watch, workspace } = watched();
    const text = jumpText("both", 211);
    writeFileSync(join(path, "session.json"), JSON.stringify({ athlete: { code: "GH-07" } }));
    writeFileSync(join(path, "countermovement-both-1.csv"), text);
    writeFileSync(join(path, "countermovement-both-2.csv"), text);
    const isDescribed = () => workspace.analysis(session).result.description.athlete !== undefined;
    await until(watch, (view) => view.taken === 2 && isDescribed());
    const { result } = workspace.analysis(session);
    expect(result.description.athlete?.code).toBe("GH-07");
    expect(result.trials.flatMap((trial) => trial.findings).map((each) => each.code)).toContain("recording-repeated");
  });

  test("folders below the watched one are sessions of their own", async () => {
    const { path, session, watch, workspace } = watched();
    mkdirSync(join(path, "athlete/today"), { recursive: true });
    writeFileSync(join(path, "athlete/today/jump.csv"), jumpText("both", 213));
    const view = await until(watch, ({ newest }) => newest !== undefined);
    expect(view.newest?.session).toBe(`${session}/athlete/today`);
    expect(workspace.holds(`${session}/athlete/today`)).toBe(true);
  });

  test("folders of one name in different places are different sessions, and the same folder again is the same", async () => {
    const { path, watch, workspace } = watched();
    const [first, second] = ["a", "b"].map((place) => join(path, place, "today"));
    if (first === undefined || second === undefined) throw new Error("there are two");
    for (const folder of [first, second]) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, "jump.csv"), jumpText("both", folder === first ? 215 : 217));
    }
    const sessions: (string | undefined)[] = [];
    for (const folder of [first, second, first]) {
      watch.start(folder);
      sessions.push((await until(watch, ({ newest }) => newest !== undefined)).newest?.session);
    }
    expect(sessions).toEqual(["today", "today (2)", "today"]);
    expect(workspace.analysis("today").result.trials).toHaveLength(1);
  });

  test("no folder, and a path that is not whole, are refused in a sentence", () => {
    const watch = new SessionWatch(new WorkspaceState(defaultSettings, "no-such-folder"), { report: complain });
    expect(() => watch.start("relative/folder")).toThrow("whole path");
    expect(() => watch.start("/no/such/folder/anywhere")).toThrow("There is no folder");
    expect(watch.read()).toMatchObject({ state: "off", folder: "" });
  });
});
