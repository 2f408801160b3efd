import { beforeEach, describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { Host } from "../../electron/boundary/host-api.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { simulateSession } from "../bench/weight/simulated-session.ts";
import { directHost } from "./direct-host.ts";

const folder = "mixed";
const person = (seed: number, massKg: number) =>
  ({ seed, massKg, heights: { left: 0.15, right: 0.14 }, trials: 1, twoLegTrials: 1 }) as const;
const strangers = simulateSession(person(5003, 64), { left: 1, right: 1 }, "other-");
let host: Host;

beforeEach(async () => {
  host = directHost(makeHandlers(new WorkspaceState(defaultSettings, "/nowhere"), "browser"));
  for (const { file, bytes } of [...simulateSession(person(5001, 72), { left: 1, right: 1 }, "own-"), ...strangers]) {
    await host.call("recordings.add", { path: `${folder}/${file}`, bytes });
  }
});

describe("a question whose recordings these are", () => {
  const trials = strangers.map(({ file }) => ({ file, trial: 1 }));

  test("is answered by keeping in one step that can be taken back", async () => {
    const asked = await host.call("workspace.read", {});
    expect(asked.session?.athleteQuestion?.groups.map((group) => group.trials.length)).toEqual([3, 3]);
    const kept = await host.call("trials.keepOrExclude", { folder, trials, decision: { kept: true } });
    expect(kept.session?.athleteQuestion).toBeUndefined();
    expect(kept.undo).toBe("Keep 3 trials");
    const back = await host.call("workspace.undo", {});
    expect(back.session?.athleteQuestion).toBeDefined();
  });

  test("is answered by excluding one group, with the reason on each trial", async () => {
    const decision = { excluded: { reason: "another athlete" } };
    const after = await host.call("trials.keepOrExclude", { folder, trials, decision });
    expect(after.session?.athleteQuestion).toBeUndefined();
    expect(after.session?.trials.filter(({ held }) => held !== undefined)).toEqual([]);
    expect(after.session?.trials.filter(({ excluded }) => excluded?.reason === "another athlete").length).toBe(3);
  });
});
