// Plants each fault of planted/register-faults.ts in a copy of the tree, runs the tests that must notice it, and writes
// planted-register-faults.md beside this file: which test noticed. Run: node tests/bench/planted-register-faults.ts [word
// of a fault] (Node 24).
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { type PlantedFault, plantedFaults } from "./planted/register-faults.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const copied = ["electron", "core", "tests", "build", "package.json", "tsconfig.json"];

/** What is read of the test runner's report. */
const reportSchema = z.object({
  testResults: z.array(z.object({ assertionResults: z.array(z.object({ title: z.string(), status: z.string() })) })),
});

/** A fault and the tests that failed with it. */
interface Outcome {
  readonly planted: PlantedFault;
  readonly failed: readonly string[];
}

function failingTests(tree: string, tests: readonly string[]): readonly string[] {
  const out = join(tree, "report.json");
  const runner = join(root, "node_modules/vitest/vitest.mjs");
  const words = ["run", "--config", "build/vitest.config.ts", "--reporter=json", `--outputFile=${out}`, ...tests];
  rmSync(out, { force: true });
  spawnSync(process.execPath, [runner, ...words], { cwd: tree, stdio: "ignore" });
  const { testResults } = reportSchema.parse(JSON.parse(readFileSync(out, "utf8")));
  const results = testResults.flatMap(({ assertionResults }) => assertionResults);
  if (results.length === 0) throw new Error(`No test ran of ${tests.join(", ")}.`);
  return results.filter(({ status }) => status === "failed").map(({ title }) => title);
}

/** Plants a fault for as long as the work takes. */
function withFault<Result>(tree: string, { fault, patches }: PlantedFault, work: () => Result): Result {
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

function tableOf(outcomes: readonly Outcome[]): string {
  const rows = outcomes.map(({ planted, failed }) => {
    const files = [...new Set(planted.patches.map(({ file }) => `\`${file}\``))].join(", ");
    const noticed = failed.includes(planted.noticedBy) ? `"${planted.noticedBy}"` : "**nobody**";
    return `| ${planted.fault} | ${files} | ${noticed} | ${failed.length} |`;
  });
  return `# Faults planted in the register

Made by \`node tests/bench/planted-register-faults.ts\`: each is planted in a copy of the tree, and of the tests named in
\`planted/register-faults.ts\` the one below fails; without a fault all of them pass.

| fault | planted in | noticed by the test | tests that failed |
|---|---|---|--:|
${rows.join("\n")}
`;
}

const [word = ""] = process.argv.slice(2);
const chosen = plantedFaults.filter(({ fault }) => fault.includes(word));
const tree = mkdtempSync(join(tmpdir(), "counterpoise-planted-"));
try {
  for (const each of copied) cpSync(join(root, each), join(tree, each), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(tree, "node_modules"));
  const sound = failingTests(tree, [...new Set(chosen.flatMap(({ tests }) => tests))]);
  if (sound.length > 0) throw new Error(`Without any fault these fail: ${sound.join("; ")}`);
  const outcomes = chosen.map((planted) => {
    const failed = withFault(tree, planted, () => failingTests(tree, planted.tests));
    console.log(
      `${failed.includes(planted.noticedBy) ? "noticed" : "NOT NOTICED"}: ${planted.fault} (${failed.join("; ")})`,
    );
    return { planted, failed };
  });
  if (word === "") writeFileSync(new URL("planted-register-faults.md", import.meta.url), tableOf(outcomes));
  process.exitCode = outcomes.every(({ planted, failed }) => failed.includes(planted.noticedBy)) ? 0 : 1;
} finally {
  rmSync(tree, { recursive: true, force: true });
}
