// Plants each fault of planted/core-faults.ts in a copy of the tree, runs the tests that should notice it, and writes
// planted-core-faults.md beside this file. Run: node tests/bench/planted-core-faults.ts [word of a fault] (Node 24).
import { writeFileSync } from "node:fs";
import { type CoreFault, coreFaults } from "./planted/core-faults.ts";
import { failingTests, withCopy, withPatches } from "./planted/plant.ts";

interface Outcome {
  readonly planted: CoreFault;
  /** Titles of the tests that failed with it. */
  readonly failed: readonly string[];
}

function tableOf(outcomes: readonly Outcome[]): string {
  const rows = outcomes.map(({ planted: { fault, file }, failed }) => {
    const [first] = failed;
    const noticed = first === undefined ? "**nobody**" : `"${first.replaceAll("|", "\\|")}"`;
    return `| ${fault} | \`${file}\` | ${noticed} | ${failed.length} |`;
  });
  return `# Faults planted in the core

Made by \`node tests/bench/planted-core-faults.ts\`: each is planted in a copy of the tree, and of the tests named in
\`planted/core-faults.ts\` those counted here fail, the first of them by name; without a fault all of them pass.

| fault | planted in | noticed by the test | tests that failed |
|---|---|---|--:|
${rows.join("\n")}
`;
}

const [word = ""] = process.argv.slice(2);
const chosen = coreFaults.filter(({ fault }) => fault.includes(word));
withCopy((tree) => {
  const sound = failingTests(tree, [...new Set(chosen.flatMap(({ tests }) => tests))]);
  if (sound.length > 0) throw new Error(`Without any fault these fail: ${sound.join("; ")}`);
  const outcomes = chosen.map((planted) => {
    const failed = withPatches(tree, planted.fault, [planted], () => failingTests(tree, planted.tests));
    console.log(`${failed.length > 0 ? "noticed" : "NOT NOTICED"}: ${planted.fault} (${failed.length})`);
    return { planted, failed };
  });
  if (word === "") writeFileSync(new URL("planted-core-faults.md", import.meta.url), tableOf(outcomes));
  process.exitCode = outcomes.every(({ failed }) => failed.length > 0) ? 0 : 1;
});
