// Faults that spoil a jump's height, of varied size, at rates, masses and noise on which nothing was tuned: how many are
// named by their own finding, how many heights by impulse are left that are off by more than a centimetre, and how many
// good trials of every test are touched by any of these findings.
// Run: node tests/bench/spoiled-jumps.ts [--each 200] [--good 1000] [--first 0] [--even] (Node 24). It prints the table
// that stands beside it as spoiled-jumps.md.
import { parseArgs } from "node:util";
import { analyzeRecording } from "../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { asRecording } from "../core/simulated/simulated-trial.ts";
import { type SpoiledKind, spoiledKinds } from "./faults/spoiled-jumps.ts";
import { goodCondition } from "./varied/conditions.ts";
import { drawVariedTrial } from "./varied/draw-trial.ts";

const { values } = parseArgs({
  options: {
    each: { type: "string", default: "200" },
    good: { type: "string", default: "1000" },
    first: { type: "string", default: "0" },
    even: { type: "boolean", default: false },
  },
});
const first = Number(values.first);
const seedsOf = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => 2 * (index + first) + (values.even ? 0 : 1));

/** A height off by more than this is spoiled. */
const spoiledMetres = 0.01;

function row({ name, code, draw }: SpoiledKind): string {
  let caught = 0;
  let left = 0;
  let worst = 0;
  const others = new Map<string, number>();
  for (const seed of seedsOf(Number(values.each))) {
    const { recording, limb, jumpHeightMetres } = draw(seed);
    const [trial] = analyzeRecording(asRecording(recording), { test: "countermovementJump", limb }, defaultSettings);
    const findings = trial?.result.findings ?? [];
    const isNamed = findings.some((each) => each.code === code);
    if (isNamed) caught += 1;
    else
      for (const other of new Set(findings.map((each) => each.code))) others.set(other, (others.get(other) ?? 0) + 1);
    const height = trial?.result.measures.find(({ id }) => id === "jumpHeightImpulse")?.value;
    const off = height === undefined ? 0 : Math.abs(height - jumpHeightMetres);
    if (off > spoiledMetres) left += 1;
    worst = Math.max(worst, off);
  }
  const instead = [...others].map(([other, count]) => `${other} ${count}`).join(", ");
  return `| ${name} | \`${code}\` | ${caught} of ${values.each} | ${instead} | ${left} | ${(100 * worst).toFixed(1)} |`;
}

console.log(`# Faults that spoil a jump, and good trials beside them

Printed by \`node tests/bench/spoiled-jumps.ts --each ${values.each} --good ${values.good}\` from ${values.even ? "even" : "odd"} seeds. The findings were tuned on even seeds at 1000 Hz
with 1.2 N of noise; here are 500 to 2000 Hz, 0.4 to 3 N, 45 to 115 kg, one leg and two.

| fault | finding | named | of the others | heights left that are off by more than 1 cm | largest of them, cm |
|---|---|---|---|---|---|`);
for (const kind of spoiledKinds) console.log(row(kind));

const codes = new Set<string>(spoiledKinds.map(({ code }) => code));
const touched = seedsOf(Number(values.good)).flatMap((seed) => {
  const { recording, test, limb } = drawVariedTrial(seed, goodCondition);
  const trials = analyzeRecording(asRecording(recording), { test, limb }, defaultSettings);
  const found = trials.flatMap(({ result }) => result.findings.filter((each) => codes.has(each.code)));
  return found.length === 0 ? [] : [`seed ${seed}, ${test}: ${found.map((each) => each.code).join(", ")}`];
});
console.log(`
Of ${values.good} good trials of every test (\`varied-trials.ts\`) ${touched.length} ${touched.length === 1 ? "is" : "are"} touched by any of these findings${touched.length === 0 ? "." : `: ${touched.join("; ")}.`}`);
