// Times one trial from columns in memory to every measure, finding and uncertainty: 10 s on two plates at 1000 Hz.
// Run: node tests/bench/analysis-speed.ts (Node 24). Where python3 with SciPy is at hand, a minimal pipeline of the
// same jump (one filter, one height, nine impulses) runs beside it, so that the figures compare as a ratio: of medians,
// and of the fastest runs, which other work on the machine moves least.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { analyzeRecording } from "../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../core/simulate/draw-jump.ts";
import { asRecording } from "../core/simulated/simulated-trial.ts";

const warmUps = 50;
const runs = 200;
const seconds = 10;

const options = {
  ...drawJump(3, { limb: "both", plates: "two", kind: "noisy", ratesHz: [1000] }),
  quietSecondsBefore: 4,
};
const short = simulateCountermovementJump({ ...options, quietSecondsAfter: 4 });
const lacking = seconds - short.sampleCount / short.rateHz;
const simulated = simulateCountermovementJump({ ...options, quietSecondsAfter: 4 + lacking });
const recording = asRecording(simulated);

const milliseconds: number[] = [];
let measures = 0;
for (let run = 0; run < warmUps + runs; run += 1) {
  const start = performance.now();
  const trials = analyzeRecording(recording, { test: "countermovementJump", limb: "both" }, defaultSettings);
  const taken = performance.now() - start;
  measures = trials[0]?.result.measures.length ?? 0;
  if (run >= warmUps) milliseconds.push(taken);
}
milliseconds.sort((a, b) => a - b);
const median = milliseconds[runs / 2]!;
const fastest = milliseconds[0]!;
console.log(`${recording.sampleCount} samples, two plates, ${measures} measures with uncertainties`);
console.log(
  `median ${median.toFixed(2)} ms, fastest ${fastest.toFixed(2)} ms, 95 % ${milliseconds[Math.floor(0.95 * runs)]!.toFixed(2)} ms (${runs} runs)`,
);

const folder = mkdtempSync(join(tmpdir(), "counterpoise-bench-"));
try {
  const file = join(folder, "force.csv");
  const [left, right] = recording.plates.map((plate) => plate.force);
  writeFileSync(file, Array.from(left!, (newtons, index) => `${newtons},${right![index]}`).join("\n"));
  const script = join(dirname(fileURLToPath(import.meta.url)), "minimal-pipeline.py");
  const python = spawnSync("python3", [script, file], { encoding: "utf8" });
  if (python.status === 0) {
    const [theirs = Number.NaN, theirFastest = Number.NaN] = python.stdout.split(" ").map(Number);
    console.log(
      `minimal NumPy/SciPy pipeline: median ${theirs.toFixed(2)} ms, fastest ${theirFastest.toFixed(2)} ms; ratio of medians ${(median / theirs).toFixed(1)}, of the fastest ${(fastest / theirFastest).toFixed(1)}`,
    );
  } else console.log("python3 with SciPy is not at hand, so there is no ratio.");
} finally {
  rmSync(folder, { recursive: true });
}
