import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { readTable } from "../../../core/bytes/read-table.ts";
import { layoutShape } from "../../../core/recording/layout-shape.ts";
import { writeLayout } from "../../../core/stated/layout-file.ts";
import { bytesOf, jumpText, temporaryFolder } from "../simulated-recordings.ts";
import { runInProcess } from "./run-in-process.ts";

const folder = temporaryFolder();
afterAll(() => folder.remove());

const jump = jumpText("both", 301);
/** The same jump as a file that says neither its rate nor its unit. */
const silent = jump
  .split("\n")
  .map((line, index) => (index === 0 ? "a,b" : line.split(",").slice(1).join(",")))
  .join("\n");
const { table } = readTable(bytesOf(silent));
if (table === undefined) throw new Error("the file holds a table");
folder.write(
  {
    "jump.csv": jump,
    "silent.csv": silent,
    "other.csv": silent.replace("a,b", "a,c"),
    "notes.txt": "time (s);left (N)\n",
    "lab.layout.json": writeLayout({
      schemaVersion: 1,
      name: "lab",
      shape: layoutShape(table),
      answers: { rateHz: 1000, unit: "N", left: 1, right: 2 },
    }),
    "broken.layout.json": "{}",
  },
  "files",
);
const path = (name: string) => join(folder.path, "files", name);

describe("counterpoise inspect", () => {
  test("says dialect, rate, every channel with its figures, and values in full precision", async () => {
    const { code, out } = await runInProcess(
      "inspect",
      path("jump.csv"),
      "--format",
      "json",
      "--samples",
      "0,100,999999",
    );
    expect(code).toBe(0);
    const rows = jump
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => line.split(",").map(Number));
    const left = rows.map((row) => row[1] ?? Number.NaN);
    const { files } = JSON.parse(out);
    expect(files).toHaveLength(1);
    expect(files[0]).toMatchObject({
      file: "jump.csv",
      kind: "delimited",
      delimiter: "comma",
      rateHz: 1000,
      rows: rows.length,
    });
    expect(files[0].channels[1]).toMatchObject({
      name: "left (N)",
      role: "force",
      limb: "left",
      minimum: Math.min(...left),
      maximum: Math.max(...left),
      mean: left.reduce((sum, value) => sum + value, 0) / left.length,
      values: [left[0], left[100], null],
    });
  });

  test("prints the same for reading, a channel a line", async () => {
    const { code, out } = await runInProcess("inspect", path("jump.csv"));
    expect(code).toBe(0);
    expect(out).toContain("Rate: 1000 Hz, from: column time");
    expect(out).toMatch(/2 left \(N\) +force left +N +number/);
  });

  test("a refused file is inspected all the same, beside the others, and the exit code says so", async () => {
    const { code, out } = await runInProcess("inspect", path("silent.csv"), path("jump.csv"), path("notes.txt"));
    expect(code).toBe(1);
    expect(out).toMatch(/silent\.csv[\s\S]*refusal rate-missing/);
    expect(out).toMatch(/notes\.txt[\s\S]*refusal not-data/);
    expect(out).toContain("jump.csv");
  });

  test.each([
    [["--samples", "1,x"], '--samples is written like 0,100,250, samples counted from 0; "x" is none.'],
    [["--samples", "-1"], '--samples is written like 0,100,250, samples counted from 0; "-1" is none.'],
    [["--format", "csv"], '--format must be one of text, json, not "csv".'],
  ])("%j is refused in a sentence", async (options, sentence) => {
    expect(await runInProcess("inspect", path("jump.csv"), ...options)).toEqual({
      code: 2,
      out: "",
      err: `${sentence}\n`,
    });
  });
});

describe("--layout", () => {
  test("answers for every file of its shape and for no other, in inspect and in analyze", async () => {
    const layout = ["--layout", path("lab.layout.json")];
    const { out } = await runInProcess("inspect", path("silent.csv"), path("other.csv"), ...layout, "--format", "json");
    const [other, silentFile] = JSON.parse(out).files;
    expect(silentFile).toMatchObject({ file: "silent.csv", layout: "lab", rateHz: 1000, forceUnit: "N" });
    expect(other.layout).toBeUndefined();
    const test = ["--test", "countermovementJump", "--limb", "both", "--format", "json"];
    const withLayout = await runInProcess("analyze", path("silent.csv"), ...layout, ...test);
    const whole = await runInProcess("analyze", path("jump.csv"), ...test);
    expect(withLayout.code).toBe(0);
    const measures = (text: string) => JSON.parse(text).trials[0].measures;
    expect(measures(withLayout.out)).toEqual(measures(whole.out));
    const [trial] = JSON.parse(withLayout.out).trials;
    expect(trial.plates.map((plate: { proof: string }) => plate.proof)).toEqual(["unproved", "unproved"]);
  });

  test("a layout that is none or not there is refused in a sentence", async () => {
    const broken = await runInProcess("analyze", path("jump.csv"), "--layout", path("broken.layout.json"));
    expect(broken.code).toBe(2);
    expect(broken.err).toContain("The saved layout is not understood");
    const missing = await runInProcess("inspect", path("jump.csv"), "--layout", path("none.json"));
    expect([missing.code, missing.err]).toEqual([2, `--layout ${path("none.json")} cannot be read.\n`]);
  });
});
