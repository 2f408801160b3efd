import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { Host } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { projectRoot } from "../architecture/imports.ts";
import { directHost } from "./direct-host.ts";

const folder = "turned";
const samples = join(projectRoot, "sample-traces/maren-tveitlund/3-month-5-5");
const twoLegs = [1, 2, 3, 4].map((number) => `countermovement-both-${number}.csv`);

let host: Host;

beforeEach(async () => {
  host = directHost(makeHandlers(new WorkspaceState(defaultSettings, samples), "browser"));
  for (const name of readdirSync(samples)) {
    await host.call("recordings.add", { path: `${folder}/${name}`, bytes: readFileSync(join(samples, name)) });
  }
});

const brakingIndex = ({ session }: Workspace) =>
  session?.comparisons.find((each) => each.measure === "brakingImpulse" && each.legs === "both")?.index;

const codes = ({ session }: Workspace) => session?.findings.map((each) => each.code);

describe("the feet of chosen trials", () => {
  test("are swapped in one step that can be taken back and done again", async () => {
    const before = await host.call("workspace.read", {});
    expect(codes(before)).toContain("plates-contradict");

    const swapped = await host.call("trials.statePlates", { folder, files: twoLegs, feet: "swap" });
    expect(swapped.undo).toBe("Swap the feet of 4 trials");
    expect(codes(swapped)).not.toContain("plates-contradict");
    const trial = swapped.session?.trials.find((each) => each.file === twoLegs[0]);
    expect(trial?.plates).toMatchObject([
      { name: "left", limb: "right", proof: "single-leg-trial" },
      { name: "right", limb: "left", proof: "single-leg-trial" },
    ]);
    // A contradiction has no index; demo table, month 5.5: true braking index 75 %.
    expect(brakingIndex(before)).toBeUndefined();
    expect(Math.abs((brakingIndex(swapped) ?? 0) - 75)).toBeLessThan(2);
    // The gate of this session is closed: a status cannot change.
    expect(swapped.effect).toBe("It changes no status.");

    const undone = await host.call("workspace.undo", {});
    expect(codes(undone)).toContain("plates-contradict");
    expect(undone.undo).not.toContain("feet");
    expect(undone.redo).toBe("Swap the feet of 4 trials");
    expect(brakingIndex(await host.call("workspace.redo", {}))).toBe(brakingIndex(swapped));
  });

  test("are stated by the place of the plates in each file, whatever their columns are called", async () => {
    const stated = await host.call("trials.statePlates", { folder, files: twoLegs, feet: "right" });
    expect(stated.undo).toBe("State the feet of 4 trials");
    const entry = stated.session?.description.files?.find((each) => each.file === twoLegs[0]);
    expect(entry?.plates).toEqual([
      { column: "left", foot: "right" },
      { column: "right", foot: "left" },
    ]);
    expect(codes(stated)).not.toContain("plates-contradict");
    await host.call("workspace.undo", {});
  });

  test("are as they were after swapping twice, now by a person's word", async () => {
    await host.call("trials.statePlates", { folder, files: twoLegs, feet: "swap" });
    const twice = await host.call("trials.statePlates", { folder, files: twoLegs, feet: "swap" });
    expect(codes(twice)).toContain("plates-contradict");
    const entry = twice.session?.description.files?.find((each) => each.file === twoLegs[0]);
    expect(entry?.plates).toEqual([
      { column: "left", foot: "left" },
      { column: "right", foot: "right" },
    ]);
    const taken = await host.call("trials.statePlates", { folder, files: twoLegs, feet: [] });
    expect(taken.undo).toBe("Take back the stated feet of 4 trials");
    expect(taken.session?.description.files?.some((each) => each.plates !== undefined)).toBe(false);
  });

  test("may be stated column by column", async () => {
    const feet = [
      { column: "left", foot: "right" },
      { column: "right", foot: "left" },
    ] as const;
    const stated = await host.call("trials.statePlates", { folder, files: ["countermovement-both-2.csv"], feet });
    expect(stated.undo).toBe("State the feet of 1 trial");
    // One layout is borne out, the other three files' is still contradicted.
    expect(codes(stated)).toContain("plates-contradict");
  });

  test("cannot be swapped in a file that is not there or has no two plates", async () => {
    const state = (file: string) => host.call("trials.statePlates", { folder, files: [file], feet: "swap" });
    await expect(state("gone.csv")).rejects.toThrow("not among the session's recordings");
    const onePlate = "time (s),force (N)\n".concat("0.001,1\n".repeat(5));
    await host.call("recordings.add", { path: `${folder}/one.csv`, bytes: new TextEncoder().encode(onePlate) });
    await expect(state("one.csv")).rejects.toThrow("no two plates");
  });
});
