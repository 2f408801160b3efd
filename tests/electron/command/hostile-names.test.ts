import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { describedSession, jumpText, temporaryFolder } from "../simulated-recordings.ts";
import { runInProcess } from "./run-in-process.ts";

/** Clears the screen, turns the direction of writing, isolates, begins a sequence in one byte, ends a title. */
const hostile = "\u001b[2J\u202e\u2066\u009b31m\u0007";
const visible = "\\u001b[2J\\u202e\\u2066\\u009b31m\\u0007";
const fileName = `jump\n0 refused${hostile}.csv`;
const code = `GH-1\nerased\t${hostile}`;

let folder: ReturnType<typeof temporaryFolder>;
const at = (...parts: readonly string[]) => join(folder.path, ...parts);

beforeAll(() => {
  folder = temporaryFolder();
  const [header = "", ...rows] = jumpText("both", 401).split("\n");
  const named = header.replace("left", `left${hostile}`);
  expect(named).not.toBe(header);
  const text = [named, ...rows].join("\n");
  folder.write({ [fileName]: text, [`dead${hostile}`]: "neither" }, `day${hostile}`);
  const session = JSON.parse(describedSession()["session.json"] ?? "") as Record<string, unknown>;
  const described = { ...session, athlete: { code }, milestone: `month 7${hostile}` };
  folder.write({ ...describedSession(), "session.json": JSON.stringify(described) }, "month-7");
});
afterAll(() => folder.remove());

/** Everything but line breaks and tabs that a terminal acts on or hides. */
const acting = /(?![\n\t])[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/u;

describe("names from files, folders, columns and records reach the terminal without acting on it", () => {
  test.each([
    ["analyze", ["--format", "table"]],
    ["analyze", ["--format", "csv"]],
    ["inspect", []],
    ["inspect", ["--format", "json"]],
    ["analyze", ["--format", "json"]],
  ] as const)("%s %j", async (command, options) => {
    const ran = await runInProcess(command, at(`day${hostile}`), at("month-7"), ...options);
    expect(ran.code).toBeLessThan(3);
    expect(acting.exec(ran.out)?.[0]).toBeUndefined();
    expect(acting.exec(ran.err)?.[0]).toBeUndefined();
    expect(`${ran.out}${ran.err}`).toContain(visible);
    // What follows a line break within a name begins no line of its own; in CSV it stands in quotes.
    if (!options.some((option) => option === "csv")) expect(ran.out).not.toMatch(/^(0 refused|erased)/m);
    expect(ran.err).not.toMatch(/^(0 refused|erased)/m);
  });

  test("a JSON document says the same as before", async () => {
    const { out } = await runInProcess("inspect", at(`day${hostile}`), "--format", "json");
    expect(out).toContain("\\u202e\\u2066\\u009b");
    const { files } = JSON.parse(out) as { readonly files: readonly { readonly file: string }[] };
    expect(files.map(({ file }) => file)).toEqual([fileName]);
  });

  test("something typed that cannot be", async () => {
    for (const typed of [[`nothing${hostile}\nerased`], ["analyze", `gone${hostile}\nerased`], ["register", hostile]]) {
      const ran = await runInProcess(...typed);
      expect([ran.code, acting.exec(ran.err)?.[0], ran.err.split("\n").length]).toEqual([2, undefined, 2]);
      expect(ran.err).toContain(visible);
    }
  });

  test("the register: importing, listing and erasing", async () => {
    const register = (command: string, ...rest: readonly string[]) =>
      runInProcess("register", command, "--register", at(`clinic${hostile}.sqlite`), ...rest);
    const all = [
      await register("import", at("month-7"), at(`day${hostile}`)),
      await register("list"),
      await register("list", "--format", "json"),
      await register("export", "--out", at(`all${hostile}.zip`)),
      await register("erase", "--athlete", code),
      await register("verify"),
    ];
    for (const { code: exit, out, err } of all) {
      expect(exit).toBeLessThan(3);
      expect(acting.exec(`${out}${err}`)?.[0]).toBeUndefined();
      expect(`${out}${err}`).not.toMatch(/^(0 refused|erased)/m);
    }
    expect(all[1]?.out.split("\t")[0]).toBe(`GH-1\\u000aerased\\u0009${visible}`);
    expect(JSON.parse(all[2]?.out ?? "")).toMatchObject({ athletes: [{ code }] });
  });
});
