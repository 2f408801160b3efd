// How far symmetries of single-leg height are off on 24 simulated sessions of one athlete each, plates 0 to 1 % apart.
// Run: node tests/bench/single-leg-index.ts [--sessions 24] (Node 24). The table is kept in single-leg-index.md.
import { parseArgs } from "node:util";
import { createRandom } from "../../core/simulate/random.ts";
import { type IndexRow, sessionIndices } from "./weight/session-indices.ts";
import { simulateSession } from "./weight/simulated-session.ts";

const { values } = parseArgs({ options: { sessions: { type: "string", default: "24" } } });
const sessions = Number(values.sessions);
const rows: IndexRow[] = [];
for (let number = 0; number < sessions; number += 1) {
  const random = createRandom(4001 + 2 * number);
  const massKg = random.between(55, 95);
  const left = random.between(0.12, 0.19);
  const index = random.between(0.7, 1.05);
  const drop = random.between(0.1, 0.15);
  const gain = (number % 2 === 0 ? 1 : -1) * 0.01 * (number / Math.max(1, sessions - 1));
  const trials = simulateSession(
    {
      seed: 4001 + 2 * number,
      massKg,
      heights: { left, right: left * index },
      dropHeights: { left: drop, right: drop * index },
      trials: 4,
      twoLegTrials: 4,
    },
    { left: 1, right: 1 + gain },
  );
  rows.push(sessionIndices(trials, 100 * gain));
}

const cell = (value: number | undefined, digits: number): string => (value === undefined ? "–" : value.toFixed(digits));
console.log(
  "| plates apart, % | true index | by impulse | by flight time | status | drop heights held apart | plates found apart, % |",
);
console.log("|---|---|---|---|---|---|---|");
for (const row of rows) {
  const cells = [
    cell(row.platesApartPercent, 2),
    cell(row.trueIndex, 1),
    cell(row.impulseIndex, 1),
    cell(row.flightIndex, 1),
    row.status,
    row.dropsApart ? "yes" : "no",
    row.found,
  ];
  console.log(`| ${cells.join(" | ")} |`);
}
const errors = (of: (row: IndexRow) => number | undefined): readonly number[] =>
  rows.map((row) => Math.abs((of(row) ?? Number.NaN) - row.trueIndex)).toSorted((a, b) => a - b);
const at = (sorted: readonly number[], part: number): string => cell(sorted[Math.round(part * (sorted.length - 1))], 2);
const impulse = errors((row) => row.impulseIndex);
const flight = errors((row) => row.flightIndex);
console.log(
  [
    "",
    `Index by impulse: off by ${at(impulse, 0.5)} in the median, ${at(impulse, 0.95)} at P95, ${at(impulse, 1)} at most.`,
    `Index by flight time: off by ${at(flight, 0.5)} in the median, ${at(flight, 0.95)} at P95.`,
    `Statuses that contradict the truth: ${rows.filter((row) => row.isWrong).length} of ${rows.length}.`,
    `Single-leg drop jumps withheld because drop heights differ: ${rows.filter((row) => row.dropsApart).length} of ${rows.length}.`,
  ].join("\n"),
);
