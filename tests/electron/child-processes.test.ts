import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Readable } from "node:stream";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { programFolder } from "../../electron/program/program-folders.ts";
import { jumpText, temporaryFolder } from "./simulated-recordings.ts";

let folder: ReturnType<typeof temporaryFolder>;

beforeAll(() => {
  folder = temporaryFolder();
  for (let number = 1; number <= 6; number += 1)
    folder.write({ [`jump-${number}.csv`]: jumpText("both", 600 + number) });
});

afterAll(() => folder.remove());

const jump = ["--test", "countermovementJump", "--limb", "both"];

interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

function start(source: string, typed: readonly string[]): ChildProcess {
  const environment = { ...process.env, COUNTERPOISE_NO_BROWSER: "1", COUNTERPOISE_DATA: join(folder.path, "data") };
  return spawn(process.execPath, [join(programFolder(), source), ...typed], { env: environment });
}

function ended(child: ChildProcess): Promise<Ended> {
  let out = "";
  let err = "";
  child.stdout?.setEncoding("utf8").on("data", (piece: string) => {
    out += piece;
  });
  child.stderr?.setEncoding("utf8").on("data", (piece: string) => {
    err += piece;
  });
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code, signal) => resolve({ code, signal, out, err }));
  });
}

describe("the command line as a process of its own", () => {
  test("keeps result and talk apart, and ends with its exit code", async () => {
    const good = await ended(start("electron/command/main.ts", ["analyze", folder.path, ...jump, "--format", "json"]));
    expect([good.code, good.err.split("\n").at(-2)]).toEqual([0, "6 trials in 1 session: 6 analysed."]);
    expect(JSON.parse(good.out).trials).toHaveLength(6);
    const wrong = await ended(start("electron/command/main.ts", ["analyze", folder.path, "--limb", "arm"]));
    expect(wrong).toMatchObject({ code: 2, out: "", err: '--limb must be one of both, left, right, not "arm".\n' });
  });

  test("a reader that closes early is no failure and leaves no stack trace", async () => {
    const child = start("electron/command/main.ts", ["analyze", folder.path, ...jump, "--format", "json"]);
    child.stdout?.once("data", () => child.stdout?.destroy());
    const { code, err } = await ended(child);
    expect(code).toBe(0);
    expect(err).not.toMatch(/EPIPE|at .*\.ts:/);
  });
});

describe("serving to the browser as a process of its own", () => {
  test.each(["SIGTERM", "SIGINT"] as const)(
    "prints the address and how long it can be opened, and ends quietly on %s",
    async (signal) => {
      const child = start("electron/browser/serve.ts", []);
      createInterface(child.stdout as Readable).on("line", (line) => {
        if (line.startsWith("The address opens")) child.kill(signal);
      });
      const { code, out, err } = await ended(child);
      const [address, howLong, ...more] = out.split("\n");
      expect(address).toMatch(/^Counterpoise is at http:\/\/127\.0\.0\.1:\d+\/#[\w-]{43}$/);
      expect([howLong, more]).toEqual([
        "The address opens one tab, once, within 10 minutes; press Enter here for another one.",
        [""],
      ]);
      expect({ code, err }).toEqual({ code: 0, err: "" });
    },
  );
});
