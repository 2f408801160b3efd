// What recordings that were begun in mid-movement or ended in the landing still yield, against the simulator's truth:
// how many give a flight, which measures stand, and how far they are off in units of their own uncertainty.
// Run: node tests/bench/partial-truth.ts [--each 200] [--first 0] [--even] [--measures] (Node 24). It prints the table
// that stands beside it as partial-truth.md. `--even` takes the seeds kept for tuning.
import { parseArgs } from "node:util";
import { type Cut, cuts, drawCut } from "./partial/draw-cut.ts";
import { judgeTrial } from "./varied/judge-trial.ts";

const { values } = parseArgs({
  options: {
    each: { type: "string", default: "200" },
    first: { type: "string", default: "0" },
    even: { type: "boolean", default: false },
    measures: { type: "boolean", default: false },
  },
});
const each = Number(values.each);
const first = Number(values.first);

const flightIds = ["flightTime", "jumpHeightFlightTime", "contactTime", "peakLandingForce"];

function rootMeanSquare(errors: readonly number[]): string {
  return errors.length === 0
    ? "–"
    : Math.sqrt(errors.reduce((sum, own) => sum + own * own, 0) / errors.length).toFixed(2);
}

function row(cut: Cut): string {
  const seeds = Array.from({ length: each }, (_, index) => 2 * (index + first) + (values.even ? 0 : 1));
  const verdicts = seeds.map((seed) => judgeTrial(drawCut(seed, cut)));
  const refused = verdicts.filter(({ outcome }) => outcome === "refused");
  const errors = verdicts.flatMap((verdict) => verdict.errors);
  const ofFlight = errors.filter(({ id }) => flightIds.includes(id)).map(({ error }) => error);
  const rest = errors.filter(({ id }) => !flightIds.includes(id)).map(({ error }) => error);
  const beyond = verdicts.filter(({ wrong }) => wrong.length > 0);
  const because = [...new Set(refused.flatMap(({ codes }) => codes))].join(", ");
  if (values.measures) {
    for (const id of new Set(errors.map((own) => own.id))) {
      const own = errors.filter((other) => other.id === id).map(({ error }) => error);
      const largest = Math.max(...own.map(Math.abs)).toFixed(1);
      console.error(`  ${cut.name}: ${id} ${own.length}, root mean square ${rootMeanSquare(own)}, largest ${largest}`);
    }
  }
  const cells = [
    cut.name,
    `${verdicts.length}`,
    `${refused.length}${because === "" ? "" : ` (${because})`}`,
    (errors.length / verdicts.length).toFixed(1),
    rootMeanSquare(ofFlight),
    rootMeanSquare(rest),
    `${beyond.length}`,
  ];
  return `| ${cells.join(" | ")} |`;
}

console.log(`# What cut recordings yield

Printed by \`node tests/bench/partial-truth.ts --each ${each}\` from ${values.even ? "even" : "odd"} seeds: 500, 1000 and 2000 Hz, one and two plates, one and two
legs, with noise. Errors are in units of the stated standard uncertainty; 1 where that is right.

| recording | trials | refused | measures a trial | flight, contact and landing peak, rms | all others, rms | with a measure beyond 3 u |
|---|---|---|---|---|---|---|`);
for (const cut of cuts) console.log(row(cut));
