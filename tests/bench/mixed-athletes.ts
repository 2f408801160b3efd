// What becomes of sessions made from two athletes' recordings: asked about, held, refused or used, and how far off the used are.
// Run: node tests/bench/mixed-athletes.ts [--sessions 6] (Node 24). The table is kept in mixed-athletes.md.
import { parseArgs } from "node:util";
import { countsInMeans, isHeld } from "../../core/result/held-trial.ts";
import { createRandom } from "../../core/simulate/random.ts";
import { analyzeSimulated, simulateSession } from "./weight/simulated-session.ts";

const { values } = parseArgs({ options: { sessions: { type: "string", default: "6" } } });
const sessions = Number(values.sessions);

console.log(
  "| mass apart, % | sessions | asked | trials used | held | refused | worst height error of the used, mm | in its u |",
);
console.log("|---|---|---|---|---|---|---|---|");
for (const apart of [0, 1, 2, 3, 4, 5, 6, 8, 10]) {
  const counts = { asked: 0, used: 0, held: 0, refused: 0 };
  let worst = 0;
  let worstInU = 0;
  for (let number = 0; number < sessions; number += 1) {
    const random = createRandom(6001 + 2 * number);
    const massKg = random.between(58, 90);
    const gains = { left: 1, right: 1 + random.between(-0.005, 0.005) };
    // From one stranger a limb to as many trials as the athlete's own.
    const athlete = (seed: number, mass: number, height: number, trials: number, ends?: number) => ({
      seed,
      massKg: mass,
      heights: { left: height, right: height * 0.93 },
      dropHeights: { left: 0.13, right: 0.12 },
      trials,
      twoLegTrials: trials,
      ...(ends === undefined ? {} : { dropsEndAfterSeconds: ends }),
    });
    const trials = [
      ...simulateSession(athlete(6001 + 2 * number, massKg, 0.17, 3), gains, "own-"),
      ...simulateSession(
        athlete(6301 + 2 * number, massKg * (1 + apart / 100), 0.11, 1 + (number % 3), 0.4),
        gains,
        "other-",
      ),
    ];
    const { result } = analyzeSimulated(trials);
    if (result.findings.some(({ code }) => code === "another-athlete")) counts.asked += 1;
    for (const trial of result.trials) {
      if (trial.status === "refused") counts.refused += 1;
      else if (isHeld(trial)) counts.held += 1;
      if (!countsInMeans(trial)) continue;
      counts.used += 1;
      const truth = trials.find(({ file }) => file === trial.file);
      const height = trial.measures.find(({ id }) => id === "jumpHeightImpulse");
      if (truth === undefined || height?.uncertainty === undefined) continue;
      const error = Math.abs(height.value - truth.heightMetres);
      worst = Math.max(worst, error);
      worstInU = Math.max(worstInU, error / height.uncertainty);
    }
  }
  const { asked, used, held, refused } = counts;
  console.log(
    `| ${apart} | ${sessions} | ${asked} | ${used} | ${held} | ${refused} | ${(1000 * worst).toFixed(1)} | ${worstInU.toFixed(1)} |`,
  );
}
