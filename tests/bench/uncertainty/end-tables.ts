import type { TrialResult } from "../../../core/result/trial-result.ts";
import { measured, quantile } from "../../core/simulated/simulated-trial.ts";
import { type Population, type StandingJump, standingJumps } from "./simulated-jumps.ts";

/** Impulse height (mm) and weight (%) with two ends and with one, on the same jumps. */
export function endsTable(jumps: readonly StandingJump[]): string[] {
  return [
    line("", ["height P50", "height P95", "weight P50", "weight P95"]),
    ...(["bothEnds", "oneEnd"] as const).map((ends) => {
      const { height, weight } = endErrors(jumps, ends);
      return line(ends === "bothEnds" ? "two ends" : "one end", [
        `${quantile(height, 0.5).toFixed(2)} mm`,
        `${quantile(height, 0.95).toFixed(2)} mm`,
        `${quantile(weight, 0.5).toFixed(3)} %`,
        `${quantile(weight, 0.95).toFixed(3)} %`,
      ]);
    }),
  ];
}

/** Absolute errors of impulse height in millimetres and of body weight in per cent. */
export function endErrors(jumps: readonly StandingJump[], ends: "bothEnds" | "oneEnd") {
  const errors = (error: (trial: TrialResult, jump: StandingJump) => number): number[] =>
    jumps.map((jump) => Math.abs(error(jump[ends], jump)));
  return {
    height: errors((trial, { truth }) => 1000 * (measured(trial, "jumpHeightImpulse") - truth.jumpHeightMetres)),
    weight: errors((trial, { truth }) => 100 * (measured(trial, "bodyWeight") / truth.bodyWeightNewtons - 1)),
  };
}

const swayMillimetres = [0.4, 0.8, 1.2, 1.5];
const quietSeconds = [1.2, 2, 3, 4];

/** P95 of the one-ended impulse height (mm) over sway amplitude and seconds of quiet standing. */
export function swayTable(population: Population): string[] {
  return [
    line(
      "sway, root mean square",
      quietSeconds.map((seconds) => `${seconds} s`),
    ),
    ...swayMillimetres.map((millimetres) =>
      line(
        `${millimetres} mm`,
        quietSeconds.map((seconds) => {
          const metres = millimetres / 1000;
          const jumps = standingJumps({ ...population, quietSeconds: seconds, swayMetres: [metres, metres] });
          return `${quantile(endErrors(jumps, "oneEnd").height, 0.95).toFixed(1)} mm`;
        }),
      ),
    ),
  ];
}

function line(first: string, cells: readonly string[]): string {
  return [first.padEnd(24), ...cells.map((cell) => cell.padStart(12))].join("");
}
