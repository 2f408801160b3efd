import { existsSync, linkSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { engineVersion } from "../../../core/ground/version.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { ResultDocument } from "../../../core/sheet/result-document.ts";
import { run } from "../../../electron/command/run.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { directHost } from "../direct-host.ts";
import { describedSession, jumpText, sessionFiles, temporaryFolder } from "../simulated-recordings.ts";
import { runInProcess } from "./run-in-process.ts";

let folder: ReturnType<typeof temporaryFolder>;
const at = (...parts: readonly string[]) => join(folder.path, ...parts);
const document = (text: string): ResultDocument => JSON.parse(text);

const jump = ["--test", "countermovementJump", "--limb", "both"];

beforeAll(() => {
  folder = temporaryFolder();
  folder.write(describedSession(), "month-7");
  folder.write({ "good.csv": jumpText("both", 401), "letter.txt": "time (s);left (N)\n" }, "mixed");
  symlinkSync(at("gone"), at("mixed", "dangling.csv"));
  folder.write({ "README.md": "nothing here" }, "empty");
  folder.write(describedSession(), "two/a");
  folder.write({ "countermovement-both-1.csv": jumpText("both", 403) }, "two/b");
  folder.write({ "one-column.txt": "700.5\n".repeat(3000) });
});

afterAll(() => folder.remove());

describe("counterpoise analyze", () => {
  test("a described session is analysed whole: exit code 0, the result alone on standard output", async () => {
    const ran = await runInProcess("analyze", at("month-7"), "--format", "json");
    expect([ran.code, ran.err.split("\n").at(-2)]).toEqual([0, "9 trials in 1 session: 9 analysed."]);
    const { trials, engine } = document(ran.out);
    expect(engine.version).toBe(engineVersion);
    expect(trials.map((trial) => [trial.file, trial.trial, trial.status])).toEqual(
      Object.keys(sessionFiles).map((file) => [file, 1, "analysed"]),
    );
  });

  test("runs give the same bytes, without an absolute path", async () => {
    for (const format of ["json", "csv", "table"]) {
      const first = await runInProcess("analyze", at("two"), "--format", format);
      const again = await runInProcess("analyze", at("two"), "--format", format);
      expect(again.out).toBe(first.out);
      expect(first.out).not.toContain(folder.path);
    }
  });

  test("window and command line give the same file, byte for byte", async () => {
    const host = directHost(makeHandlers(new WorkspaceState(defaultSettings, at("month-7")), "browser"));
    await host.call("workspace.openDemo", {});
    for (const format of ["json", "csv"] as const) {
      const made = await host.call("files.make", { folder: "", format });
      const { out } = await runInProcess("analyze", at("month-7"), "--format", format);
      expect(new TextDecoder().decode(made.bytes)).toBe(out);
    }
  });

  test("trials are ordered by path and number over all sessions below a folder", async () => {
    const { trials } = document((await runInProcess("analyze", at("two"), "--format", "json")).out);
    expect(trials.map((trial) => trial.file)).toEqual([
      ...Object.keys(sessionFiles).map((file) => `a/${file}`),
      "b/countermovement-both-1.csv",
    ]);
  });

  test("an unreadable file and one without a row are refused and cost nothing else: exit code 1", async () => {
    const ran = await runInProcess("analyze", at("mixed"), ...jump, "--format", "json");
    expect(ran.code).toBe(1);
    const { trials } = document(ran.out);
    expect(trials.map((trial) => [trial.file, trial.status, trial.measures.length > 0])).toEqual([
      ["dangling.csv", "refused", false],
      ["good.csv", "analysed", true],
      ["letter.txt", "refused", false],
    ]);
    const codes = trials[0]?.findings.map((each) => each.code);
    expect(codes).toEqual(["unreadable"]);
    expect(ran.err).toMatch(
      /^refusal unreadable, dangling\.csv trial 1.*: The file could not be read because it is a link to something that is not there\./m,
    );
  });

  test("the good trial beside unreadable ones has the numbers it has alone", async () => {
    const beside = document((await runInProcess("analyze", at("mixed"), ...jump, "--format", "json")).out);
    const alone = document((await runInProcess("analyze", at("mixed", "good.csv"), ...jump, "--format", "json")).out);
    expect(beside.trials.find((trial) => trial.file === "good.csv")).toEqual(alone.trials[0]);
  });

  test("a single column without a rate is refused by a sentence that names the option", async () => {
    const ran = await runInProcess("analyze", at("one-column.txt"), "--unit", "N", ...jump, "--format", "json");
    expect(ran.code).toBe(1);
    expect(document(ran.out).trials[0]?.findings.map((each) => each.code)).toContain("rate-missing");
    expect(ran.err).toContain("--rate");
  });

  test("the same column with rate and unit stated is analysed", async () => {
    const total = jumpText("both", 405)
      .trimEnd()
      .split("\n")
      .slice(1)
      .map((line) => line.split(",").slice(1).map(Number))
      .map(([left = 0, right = 0]) => (left + right).toFixed(2));
    folder.write({ "total.txt": `${total.join("\n")}\n` });
    const stated = ["--rate", "1000", "--unit", "N", ...jump, "--format", "json"];
    const ran = await runInProcess("analyze", at("total.txt"), ...stated);
    expect([ran.code, document(ran.out).trials[0]?.rate]).toEqual([0, 1000]);
  });

  test("the table names measures with units and uncertainties, and carries its findings", async () => {
    const ran = await runInProcess("analyze", at("mixed"), ...jump);
    expect(ran.out).toMatch(/Jump height, by impulse +\d+\.\d+ ± \d+\.\d+\u00a0cm/);
    expect(ran.out).toContain("letter.txt trial 1: countermovement jump, both legs, refused");
    expect(ran.out).toContain("refusal unreadable");
    expect(ran.err.split("\n")).toEqual([
      expect.stringMatching(/^refused dangling\.csv: The file could not be read because/),
      expect.stringMatching(/^refused letter\.txt: The text holds no rows of numbers\./),
      "3 files: 1 understood, 2 refused.",
      "3 trials in 1 session: 1 analysed, 2 refused.",
      "",
    ]);
  });

  test("the table of a whole session shows sides and criteria with their status in words", async () => {
    const { out } = await runInProcess("analyze", at("month-7"));
    expect(out).toContain("GH-07 · month 7 · 2026-10-14");
    expect(out).toContain("Simulated recordings.");
    expect(out).toMatch(
      /Jump height symmetry, single-leg countermovement jump, at least 90 %: (not met|too close to call|met)/,
    );
  });

  test("what is stated outranks session.json", async () => {
    const { out } = await runInProcess("analyze", at("month-7"), "--involved", "left", "--format", "json");
    expect(
      document(out).comparisons.every((each) => each.involved === undefined || each.involved.side === "left"),
    ).toBe(true);
  });

  test("gravity that is stated changes mass and not weight", async () => {
    const measure = async (...typed: readonly string[]) => {
      const { out } = await runInProcess("analyze", at("mixed", "good.csv"), ...jump, ...typed, "--format", "json");
      const find = (id: string) => document(out).trials[0]?.measures.find((each) => each.id === id)?.value ?? 0;
      return { weight: find("bodyWeight"), mass: find("bodyMass") };
    };
    const standard = await measure();
    const stated = await measure("--gravity", "9.8");
    expect(stated.weight).toBe(standard.weight);
    expect(stated.mass).toBeCloseTo(stated.weight / 9.8, 9);
  });

  test("single files keep their own names and the description beside them", async () => {
    const { out } = await runInProcess("analyze", at("month-7", "countermovement-left-1.csv"), "--format", "json");
    expect(document(out).trials.map((trial) => [trial.file, trial.limb])).toEqual([
      ["countermovement-left-1.csv", "left"],
    ]);
  });

  test("a folder written out by a shell's star is its session, notes and session.json no recordings", async () => {
    const everything = readdirSync(at("month-7")).map((name) => at("month-7", name));
    const starred = await runInProcess("analyze", ...everything, "--format", "json");
    const whole = await runInProcess("analyze", at("month-7"), "--format", "json");
    expect(starred.out).toBe(whole.out);
  });

  test("a folder named twice is read once", async () => {
    const twice = await runInProcess("analyze", at("month-7"), at("month-7", "."), "--format", "csv");
    expect(twice.out).toBe((await runInProcess("analyze", at("month-7"), "--format", "csv")).out);
  });

  test("equal paths of two arguments are pointed out", async () => {
    const ran = await runInProcess("analyze", at("two", "a"), at("two", "b"), "--format", "csv");
    expect(ran.err).toContain("countermovement-both-1.csv was found under more than one argument");
  });
});

describe("nothing to read, or nothing that can be", () => {
  test.each([
    [[], "Name a command"],
    [["anlyze"], 'There is no command "anlyze"'],
    [["analyze"], "Name at least one recording or folder"],
    [["analyze", "EMPTY"], "There are no recordings in"],
    [["analyze", "GONE"], "is not there"],
    [["analyze", "README"], "is no recording"],
    [["analyze", "GOOD", "--rate", "x"], "--rate must be a number"],
    [["analyze", "GOOD", "--format", "xml"], "--format must be one of table, json, csv"],
    [["sheet"], "Name exactly one folder"],
    [["sheet", "GOOD", "--out", "x.pdf"], "is no folder"],
    [["sheet", "MONTH"], "--out is needed"],
    [["sheet", "MONTH", "--out", "x.doc"], "--out must end in .html or .pdf"],
    [["sheet", "TWO", "--out", "x.pdf"], "holds 2 sessions (a, b)"],
    [["sheet", "EMPTY", "--out", "x.pdf"], "There are no recordings in"],
  ])("%j ends with exit code 2, one sentence and no result", async (typed, sentence) => {
    const places: Readonly<Record<string, string>> = {
      EMPTY: at("empty"),
      GONE: at("gone.csv"),
      README: at("empty", "README.md"),
      GOOD: at("mixed", "good.csv"),
      MONTH: at("month-7"),
      TWO: at("two"),
    };
    const ran = await runInProcess(...typed.map((word) => places[word] ?? word));
    expect([ran.code, ran.out]).toEqual([2, ""]);
    expect(ran.err).toContain(sentence);
    expect(ran.err.split("\n").filter((line) => line.includes(sentence))).toHaveLength(1);
  });

  test("a link that leads nowhere is a refused trial also when it is all there is", async () => {
    const ran = await runInProcess("analyze", at("mixed", "dangling.csv"), "--format", "json");
    expect([ran.code, document(ran.out).trials.map((trial) => trial.status)]).toEqual([1, ["refused"]]);
  });
});

describe("--out", () => {
  test("writes the same bytes as standard output, which then stays empty", async () => {
    const toFile = await runInProcess("analyze", at("month-7"), "--format", "csv", "--out", at("result.csv"));
    expect([toFile.code, toFile.out]).toEqual([0, ""]);
    expect(readFileSync(at("result.csv"), "utf8")).toBe(
      (await runInProcess("analyze", at("month-7"), "--format", "csv")).out,
    );
    expect(readdirSync(folder.path).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("never writes over an input, under whatever name", async () => {
    symlinkSync(at("mixed", "good.csv"), at("link.csv"));
    linkSync(at("mixed", "good.csv"), at("hard.csv"));
    const before = readFileSync(at("mixed", "good.csv"));
    for (const out of [at("mixed", "good.csv"), at("mixed", ".", "good.csv"), at("link.csv"), at("hard.csv")]) {
      const ran = await runInProcess("analyze", at("mixed"), ...jump, "--out", out);
      expect([ran.code, ran.out]).toEqual([2, ""]);
      expect(ran.err).toContain("recordings are never written over");
    }
    const session = await runInProcess("analyze", at("month-7"), "--out", at("month-7", "session.json"));
    expect(session.code).toBe(2);
    expect(readFileSync(at("mixed", "good.csv"))).toEqual(before);
  });

  test("a place where nothing can be written is refused before any work", async () => {
    mkdirSync(at("a-folder"), { recursive: true });
    for (const out of [at("nowhere", "x.csv"), at("a-folder"), "/dev/null"]) {
      const ran = await runInProcess("analyze", at("month-7"), "--out", out);
      expect([ran.code, ran.out], out).toEqual([2, ""]);
      expect(ran.err).toContain("--out");
    }
  });
});

describe("counterpoise sheet", () => {
  test("writes the sheet as HTML and as PDF, the same as the window's, byte for byte", async () => {
    const host = directHost(makeHandlers(new WorkspaceState(defaultSettings, at("month-7")), "browser"));
    await host.call("workspace.openDemo", {});
    for (const format of ["html", "pdf"] as const) {
      const out = at(`sheet.${format}`);
      const ran = await runInProcess("sheet", at("month-7"), "--out", out);
      expect([ran.code, ran.out]).toEqual([0, ""]);
      const made = await host.call("files.make", { folder: "", format });
      expect(Buffer.compare(readFileSync(out), made.bytes)).toBe(0);
    }
  });

  test("a session with refused trials still gives a sheet, and exit code 1", async () => {
    const ran = await runInProcess("sheet", at("mixed"), ...jump, "--out", at("mixed.html"));
    expect([ran.code, existsSync(at("mixed.html"))]).toEqual([1, true]);
  });
});

describe("a mistake in the program", () => {
  test("ends with exit code 3 and says that it is ours", async () => {
    let said = "";
    const code = await run(["--version"], {
      out: () => {
        throw new TypeError("broken inside");
      },
      err: (text) => {
        said += text;
      },
    });
    expect(code).toBe(3);
    expect(said).toMatch(/^A mistake in the program: TypeError: broken inside/);
  });
});

describe("help and version", () => {
  test("help shows examples, for the program and for each command", async () => {
    for (const typed of [["--help"], ["analyze", "--help"], ["sheet", "--help"], ["analyze", "x", "-h"]]) {
      const ran = await runInProcess(...typed);
      expect([ran.code, ran.err]).toEqual([0, ""]);
      expect(ran.out).toContain("Examples:");
      expect(ran.out).toContain("Exit codes:");
    }
  });

  test("help of a command names every option it takes", async () => {
    const analyze = (await runInProcess("analyze", "--help")).out;
    const options = "test limb involved rate unit columns mass gravity latitude altitude format out".split(" ");
    for (const option of options) expect(analyze).toContain(`--${option} `);
  });

  test("the version is that of the package", async () => {
    const description: { readonly version: string } = JSON.parse(
      readFileSync(new URL("../../../package.json", import.meta.url), "utf8"),
    );
    expect(await runInProcess("--version")).toEqual({ code: 0, out: `${description.version}\n`, err: "" });
  });
});
