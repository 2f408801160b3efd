import type { TrialResult } from "../../../core/result/trial-result.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { type SimulatedDropJump, simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { asRecording, measured } from "../../core/simulated/simulated-trial.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

const freeFall = "√(2gh) for a fall without friction, worked out by hand";
/** An effective drop height is measured to 1.5 % without noise, the speed therefore to half of that. */
const measuredFraction = 0.0075;

/** Height of the fall in m, speed in m/s. */
const rows = [
  [0.2, 1.98057],
  [0.3, 2.42569],
  [0.4, 2.80095],
] as const;

function dropFrom(heightMetres: number): SimulatedDropJump {
  return simulateDropJump({
    ...drawDropJump(11, { limb: "both", plates: "one", kind: "clean", ratesHz: [1000] }),
    boxHeightMetres: heightMetres,
    dropHeightEffectiveMetres: heightMetres,
  });
}

function analysed(heightMetres: number): TrialResult {
  const recording = asRecording(dropFrom(heightMetres));
  const [only] = analyzeRecording(recording, { test: "dropJump", limb: "both" }, defaultSettings);
  if (only === undefined) throw new RangeError("A simulated drop jump is one trial.");
  return only.result;
}

export const dropChecks: CheckGroup = {
  subject: "Drops",
  checks: rows.flatMap(([height, expected]): PublishedCheck[] => {
    const drop = `a simulated drop of ${height.toFixed(2)} m`;
    return [
      {
        check: `speed at touchdown of ${drop}`,
        source: freeFall,
        expected,
        unit: "m/s",
        tolerance: 5e-6,
        ours: () => -dropFrom(height).truth.touchdownVelocity,
      },
      {
        check: `speed at touchdown that the measured effective drop height of ${drop} stands for`,
        source: freeFall,
        expected,
        unit: "m/s",
        tolerance: measuredFraction * expected,
        ours: () => Math.sqrt(2 * defaultSettings.gravity * measured(analysed(height), "dropHeightEffective")),
      },
    ];
  }),
};
