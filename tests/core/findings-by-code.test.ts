import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type FindingCode, findingCodes } from "../../core/ground/finding-codes.ts";
import { projectRoot } from "../architecture/imports.ts";
import { jumpPairs } from "./findings/jump-pairs.ts";
import { layoutPairs } from "./findings/layout-pairs.ts";
import type { FindingPair } from "./findings/pair.ts";
import { signalPairs } from "./findings/signal-pairs.ts";
import { statementPairs } from "./findings/statement-pairs.ts";
import { tablePairs } from "./findings/table-pairs.ts";
import { weightAndPlatePairs } from "./findings/weight-and-plate-pairs.ts";

const families = [weightAndPlatePairs, signalPairs, tablePairs, layoutPairs, jumpPairs, statementPairs];
const pairs = new Map(families.flatMap((family) => Object.entries(family) as [FindingCode, FindingPair][]));

/** Findings of C3D files and of whole sessions, which only the named test builds: it must expect the code, and other files without it. */
const pairedIn: Partial<Record<FindingCode, string>> = {
  "parts-contradict": "bytes/c3d/read-c3d.test.ts",
  "parameters-damaged": "bytes/c3d/read-c3d.test.ts",
  "scaling-assumed": "bytes/c3d/read-c3d.test.ts",
  "no-force-platform": "recording/c3d/read-c3d-recording.test.ts",
  "platform-unreadable": "recording/c3d/read-c3d-recording.test.ts",
  "platform-tilted": "recording/c3d/platform-direction.test.ts",
  "platforms-left-out": "recording/c3d/read-c3d-recording.test.ts",
  "plates-disagree": "weight/plate-scaling.test.ts",
  "mass-changed": "session/mass-since-last.test.ts",
  "another-athlete": "weight/mixed-folder.test.ts",
};

/** Codes that are kept because documents may hold them, and that nothing says today. */
const saidNowhere: readonly FindingCode[] = ["test-not-available"];

test("Every finding code of the catalogue has a pair, is paired in a named test, or is said nowhere", () => {
  const known = [...pairs.keys(), ...Object.keys(pairedIn), ...saidNowhere];
  expect([...known].sort()).toEqual([...findingCodes].sort());
});

test("No code has two pairs", () => {
  expect(families.flatMap((family) => Object.keys(family))).toHaveLength(pairs.size);
});

test("A code that is said nowhere stands in no source of the core but the catalogue", () => {
  const sources = readdirSync(join(projectRoot, "core"), { recursive: true, encoding: "utf8" }).filter(
    (path) => path.endsWith(".ts") && path !== "ground/finding-codes.ts",
  );
  for (const path of sources) {
    const text = readFileSync(join(projectRoot, "core", path), "utf8");
    for (const code of saidNowhere) expect(text.includes(`"${code}"`), `${path} says ${code}`).toBe(false);
  }
});

test.each(Object.entries(pairedIn))("%s is expected in %s, where other files are read without it", (code, path) => {
  const text = readFileSync(join(projectRoot, "tests/core", path), "utf8");
  expect(text).toMatch(new RegExp(`["'\`]${code}[:"'\`]`));
  const without = /findings\)?\.toEqual\(\[\]\)|findings: \[\]|toEqual\(\[\]\)/;
  expect(without.test(text) || text.includes(`not.toContain("${code}")`), path).toBe(true);
});

describe.each([...pairs])("%s", (code, pair) => {
  test("is found where it should be", () => {
    expect(pair.has()).toContain(code);
  });

  test("is not found near it", () => {
    expect(pair.near()).not.toContain(code);
  });
});
