import { expect, test } from "vitest";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { asRecording } from "../simulated/simulated-trial.ts";

/** More than every sample: no share of equal neighbours means a lower rate, so that the stages behind see the staircase. */
const neverRepeated = 2;

test("A staircase of values that stand ten times each is analysed to its end, with edges as uncertain as its steps", () => {
  // Its limbs' edges are flat within rounding; the line through them once reached the empty level days away.
  const drawn = drawJump(3, { limb: "both", plates: "two", kind: "noisy", ratesHz: [2000] });
  const simulated = simulateCountermovementJump(drawn);
  const plates = simulated.plates.map((plate) => ({
    ...plate,
    force: plate.force.map((_, index) => Math.round(plate.force[index - (index % 10)]!)),
  }));
  const settings = { ...defaultSettings, repeatedFraction: neverRepeated };
  const statement = { test: "countermovementJump", limb: "both" } as const;
  const [only] = analyzeRecording(asRecording({ ...simulated, plates }), statement, settings);
  const edges = only!.result.events.filter(({ name }) => name === "takeoff" || name === "touchdown");
  expect(edges).toHaveLength(6);
  for (const { uncertainty } of edges) {
    // Ten samples of 0.5 ms are one value: no edge is known better than half of that, nor worse than the hold.
    expect(uncertainty).toBeGreaterThan(0.0025);
    expect(uncertainty).toBeLessThan(defaultSettings.contactHoldSeconds);
  }
});
