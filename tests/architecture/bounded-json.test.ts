import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectRoot, sourceFiles } from "./imports.ts";

/** Where JSON is parsed: after its bytes were measured, or of the program's own files. */
const allowed: Readonly<Record<string, string>> = {
  "core/stated/session-file.ts": "measured before",
  "core/stated/layout-file.ts": "measured before",
  "electron/bounded-json/read-json.ts": "measured before",
  "electron/boundary/host-codec.ts":
    "given a measured body by readRequestBody, and in the page the replies of its own host",
  "electron/register/strength/weigh-apart.ts":
    "the answer of its own program, of which execFile takes no more than 1 MB",
  "electron/program/program-folders.ts": "the program's own package.json",
};

test("documents from outside are parsed only after their bytes were measured", () => {
  const parsing = [...sourceFiles("core"), ...sourceFiles("electron"), ...sourceFiles("renderer")].filter((file) =>
    readFileSync(join(projectRoot, file), "utf8").includes("JSON.parse("),
  );
  expect(parsing.filter((file) => !(file in allowed)).map((file) => `${file} parses JSON by itself`)).toEqual([]);
  expect(Object.keys(allowed).filter((file) => !parsing.includes(file))).toEqual([]);
});
