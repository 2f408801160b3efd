// Plants each fault of planted/register-faults.ts in a copy of the tree, runs the tests that must notice it, and writes
// planted-register-faults.md beside this file: which test noticed. Run: node tests/bench/planted-register-faults.ts [word
// of a fault] (Node 24).
import { writeFileSync } from "node:fs";
import { failingTests, withCopy, withPatches } from "./planted/plant.ts";
import { type PlantedFault, plantedFaults } from "./planted/register-faults.ts";

/** A fault and the tests that failed with it. */
interface Outcome {
  readonly planted: PlantedFault;
  readonly failed: readonly string[];
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
withCopy((tree) => {
  const sound = failingTests(tree, [...new Set(chosen.flatMap(({ tests }) => tests))]);
  if (sound.length > 0) throw new Error(`Without any fault these fail: ${sound.join("; ")}`);
  const outcomes = chosen.map((planted) => {
    const { fault, patches, tests } = planted;
    const failed = withPatches(tree, fault, patches, () => failingTests(tree, tests));
    console.log(`${failed.includes(planted.noticedBy) ? "noticed" : "NOT NOTICED"}: ${fault} (${failed.join("; ")})`);
    return { planted, failed };
  });
  if (word === "") writeFileSync(new URL("planted-register-faults.md", import.meta.url), tableOf(outcomes));
  process.exitCode = outcomes.every(({ planted, failed }) => failed.includes(planted.noticedBy)) ? 0 : 1;
});
