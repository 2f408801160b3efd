// Says how often the program's 95 % intervals hold the truth, and how far its values are off, on simulated jumps.
// Run: node tests/bench/uncertainty-coverage.ts [--trials 2000] [--even] [--rate 1000] [--noise 1.5] [--brief] (Node 24).
// Odd seeds are kept for claims; --even is for tuning; --brief leaves out the bands of sway and the ends.
import { parseArgs } from "node:util";
import { swaySpectrum } from "../../core/simulate/sway.ts";
import { type CoverageRow, droppedRows, standingRows } from "./uncertainty/coverage-rows.ts";
import { endsTable, swayTable } from "./uncertainty/end-tables.ts";
import { drawnSway, droppedJumps, type Population, standingJumps } from "./uncertainty/simulated-jumps.ts";

const { values } = parseArgs({
  options: {
    trials: { type: "string", default: "2000" },
    rate: { type: "string", default: "1000" },
    noise: { type: "string", default: "1.5" },
    even: { type: "boolean", default: false },
    brief: { type: "boolean", default: false },
  },
});
const population: Population = {
  trials: Number(values.trials),
  firstSeed: values.even ? 0 : 1,
  rateHz: Number(values.rate),
  plateNoiseNewtons: Number(values.noise),
};

function printRows(rows: readonly CoverageRow[]): void {
  console.log(`${"".padEnd(33)} trials  within  error P50  error P95  median u  error/u`);
  for (const row of rows) {
    const cells = [row.medianError, row.errorP95, row.medianUncertainty].map((each) => each.toFixed(3).padStart(9));
    const within = `${(100 * row.coverage).toFixed(1)} %`.padStart(7);
    const ratio = `${row.shift.toFixed(2).padStart(5)} ± ${row.spread.toFixed(2)}`;
    console.log(
      `${row.name.padEnd(33)} ${String(row.trials).padStart(6)} ${within} ${cells.join("  ")}  ${row.unit.padEnd(5)} ${ratio}`,
    );
  }
}

const { componentCount, bandHz, fallPowers, velocityRms } = swaySpectrum;
const millimetres = drawnSway.map((each) => each * 1000);
console.log(
  [
    `Sway: ${componentCount} sinusoids of random phase between ${bandHz[0]} and ${bandHz[1]} Hz, evenly spread in the logarithm of frequency from a lowest one`,
    `that is drawn; amplitude falls with frequency to a power of ${fallPowers[0]} to ${fallPowers[1]}; displacement ${millimetres[0]} to ${millimetres[1]} mm and velocity`,
    `${1000 * velocityRms[0]} to ${1000 * velocityRms[1]} mm/s (root mean square). It fades out over the movement and comes back after the landing.`,
    `White noise of ${population.plateNoiseNewtons} N (SD) on each plate, ${population.rateHz} Hz, 45 to 120 kg, flight and contact as people have them, quiet standing of`,
    "2 to 3.2 s at each end. Intervals are value ± 1.96 u; error/u: mean ± standard deviation, 0 ± 1 where calibrated.",
  ].join("\n"),
);

console.log("\nCountermovement jumps");
const jumps = standingJumps(population);
printRows(standingRows(jumps));
console.log("\nDrop jumps, read backwards from the standing after the landing");
printRows(droppedRows(droppedJumps(population)));

if (!values.brief) {
  // A band may leave 92 to 98 %: sway is then slower or faster than the mixture that the floors are set for.
  const bands = [
    ["Only slow sway, 0.2 to 1 Hz", { swayBandHz: [0.2, 1] }],
    ["Only fast sway, 1 to 6 Hz, 0.2 to 0.65 mm", { swayBandHz: [1, 6], swayMetres: [0.0002, 0.00065] }],
  ] as const;
  for (const [title, band] of bands) {
    const banded = { ...population, trials: Math.ceil(population.trials / 4), ...band };
    console.log(`\n${title}: countermovement jumps`);
    printRows(standingRows(standingJumps(banded)));
    console.log(`\n${title}: drop jumps`);
    printRows(droppedRows(droppedJumps(banded)));
  }
  console.log(`\nTwo ends against one, the same ${jumps.length} countermovement jumps`);
  console.log(endsTable(jumps).join("\n"));
  console.log("\nOne end: error P95 by sway and by seconds of quiet standing before the jump");
  console.log(swayTable({ ...population, trials: Math.ceil(population.trials / 8) }).join("\n"));
}
