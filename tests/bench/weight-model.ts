// How sure the session model is of the plates' relative gain, and how often it is right, on synthetic weighings.
// Run: node tests/bench/weight-model.ts [--sessions 1000] (Node 24). The table is kept in weight-model.md.
import { parseArgs } from "node:util";
import { modelCheck } from "./weight/model-check.ts";

const { values } = parseArgs({ options: { sessions: { type: "string", default: "1000" } } });
console.log("| left + right trials | true scatter, % | sessions | median u, % | coverage of ± 1.96 u |");
console.log("|---|---|---|---|---|");
for (const [left, right, scatter] of [
  [3, 3, 0.0003],
  [4, 4, 0.0003],
  [1, 1, 0.0003],
  [3, 3, 0.001],
  [1, 4, 0.0003],
] as const) {
  const { sessions, medianUncertainty, coverage } = modelCheck(left, right, scatter, Number(values.sessions));
  console.log(
    `| ${left} + ${right} | ${100 * scatter} | ${sessions} | ${(100 * medianUncertainty).toFixed(3)} | ${(100 * coverage).toFixed(1)} % |`,
  );
}
