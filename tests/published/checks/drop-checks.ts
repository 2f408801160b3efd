import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { type SimulatedDropJump, simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

const freeFall = "√(2gh) for a fall without friction, worked out by hand";

/** Height of the fall in m, speed in m/s. */
const rows = [
  [0.2, 1.98057],
  [0.3, 2.42569],
  [0.4, 2.80095],
] as const;

function dropFrom(heightMetres: number): SimulatedDropJump {
  return simulateDropJump({
    ...drawDropJump(11, { limb: "both", plates: "one", kind: "clean", ratesHz: [1000] }),
    dropHeightEffectiveMetres: heightMetres,
  });
}

export const dropChecks: CheckGroup = {
  subject: "Drops",
  checks: rows.map(
    ([height, expected]): PublishedCheck => ({
      check: `speed at touchdown of a simulated drop of ${height.toFixed(2)} m`,
      source: freeFall,
      expected,
      unit: "m/s",
      tolerance: 5e-6,
      ours: () => -dropFrom(height).truth.touchdownVelocity,
    }),
  ),
};
