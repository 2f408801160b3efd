import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectRoot } from "./imports.ts";

/** They ask for no more than to be named when the program is handed on. */
const allowed = new Set([
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Bitstream-Vera",
  "BlueOak-1.0.0",
  "ISC",
  "MIT",
  "OFL-1.1",
  "Zlib",
]);

const committed = readFileSync(join(projectRoot, "build/SHIPPED.md"), "utf8");
const rows = [...committed.matchAll(/^\| (\S+) \| (\d\S*) \| (.+) \|$/gm)].map(([, name, version, licence]) => ({
  name,
  version,
  licence: licence ?? "",
}));

test("build/SHIPPED.md lists what the builds bundle and the program is installed with, in today's versions", () => {
  const script = join(projectRoot, "build/list-shipped.ts");
  expect(execFileSync(process.execPath, [script, "--print"], { cwd: projectRoot, encoding: "utf8" })).toBe(committed);
  expect(rows.map(({ name }) => name)).toEqual(expect.arrayContaining(["react", "pdfmake", "electron", "zod"]));
});

test("every licence in it is among the allowed ones", () => {
  const parts = (licence: string) =>
    licence
      .replace(/ \(in its \w+\)$/, "")
      .replaceAll(/[()]/g, "")
      .split(" AND ");
  const others = rows.filter(({ licence }) => !parts(licence).every((part) => allowed.has(part)));
  expect(others).toEqual([]);
});
