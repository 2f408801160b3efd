import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";

/** A change of one file's text; `before` stands there exactly once. */
export interface Patch {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

const root = fileURLToPath(new URL("../../..", import.meta.url));
const copied = ["electron", "core", "renderer", "sample-traces", "tests", "build", "package.json", "tsconfig.json"];

/** What is read of the test runner's report. */
const reportSchema = z.object({
  testResults: z.array(
    z.object({
      status: z.string(),
      name: z.string(),
      assertionResults: z.array(z.object({ title: z.string(), status: z.string() })),
    }),
  ),
});

/** Works with a copy of the tree, so that a fault never stands in the tree itself. */
export function withCopy<Result>(work: (tree: string) => Result): Result {
  const tree = mkdtempSync(join(tmpdir(), "counterpoise-planted-"));
  try {
    for (const each of copied) cpSync(join(root, each), join(tree, each), { recursive: true });
    symlinkSync(join(root, "node_modules"), join(tree, "node_modules"));
    return work(tree);
  } finally {
    rmSync(tree, { recursive: true, force: true });
  }
}

/** The titles of the tests that fail; the file's path where it could not even be loaded. */
export function failingTests(tree: string, tests: readonly string[]): readonly string[] {
  const out = join(tree, "report.json");
  const runner = join(root, "node_modules/vitest/vitest.mjs");
  const words = ["run", "--config", "build/vitest.config.ts", "--reporter=json", `--outputFile=${out}`, ...tests];
  rmSync(out, { force: true });
  spawnSync(process.execPath, [runner, ...words], { cwd: tree, stdio: "ignore" });
  const { testResults } = reportSchema.parse(JSON.parse(readFileSync(out, "utf8")));
  const results = testResults.flatMap(({ assertionResults }) => assertionResults);
  if (results.length === 0) throw new Error(`No test ran of ${tests.join(", ")}.`);
  const unloaded = testResults.filter((each) => each.status === "failed" && each.assertionResults.length === 0);
  const failed = results.filter(({ status }) => status === "failed").map(({ title }) => title);
  return [...failed, ...unloaded.map(({ name }) => name.slice(tree.length + 1))];
}

/** Plants a fault for as long as the work takes. */
export function withPatches<Result>(
  tree: string,
  fault: string,
  patches: readonly Patch[],
  work: () => Result,
): Result {
  const originals = patches.map(({ file }) => [file, readFileSync(join(tree, file), "utf8")] as const);
  try {
    for (const { file, before, after } of patches) {
      const text = readFileSync(join(tree, file), "utf8");
      if (text.split(before).length !== 2) throw new Error(`"${fault}" no longer fits ${file}: write it anew.`);
      writeFileSync(
        join(tree, file),
        text.replace(before, () => after),
      );
    }
    return work();
  } finally {
    // The first reading of a file that is patched twice is the one without any fault.
    for (const [file, text] of originals.toReversed()) writeFileSync(join(tree, file), text);
  }
}
