import { describe, expect, it } from "vitest";
import { overlaySession } from "../../../core/session/overlay-session.ts";
import { analyzeSamples } from "../simulated/session.ts";

const folder = "maren-tveitlund/4-month-7";
const analysis = analyzeSamples(folder, { files: (name) => name.startsWith("drop-jump") });
const twoLegs = { test: "dropJump", legs: "both" } as const;

/** Body weights; an empty plate carries nothing but noise. */
const emptyPlate = 0.02;
/** Body weights; a leg that has met the plate carries more than this within 30 ms. */
const loadedPlate = 0.2;

describe("drop jumps laid over each other", () => {
  it("stand on an empty plate before the touchdown they are aligned at, and load it right after", () => {
    const overlay = overlaySession(analysis, { test: "dropJump", legs: "single", alignedAt: "touchdown" });
    const at = (seconds: number) => overlay!.timeSeconds.findIndex((time) => time >= seconds);
    for (const side of [overlay!.first, overlay!.second]) {
      // four trials a side in the demo world
      expect(side.curves).toHaveLength(4);
      expect(Math.abs(side.mean[at(-0.02)]!)).toBeLessThan(emptyPlate);
      expect(side.mean[at(0.03)]!).toBeGreaterThan(loadedPlate);
    }
  });

  it("leave the plate at the take-off they are aligned at", () => {
    const overlay = overlaySession(analysis, { ...twoLegs, alignedAt: "takeoff" });
    const at = (seconds: number) => overlay!.timeSeconds.findIndex((time) => time >= seconds);
    expect(overlay!.first.mean[at(-0.05)]!).toBeGreaterThan(loadedPlate);
    expect(Math.abs(overlay!.first.mean[at(0.03)]!)).toBeLessThan(emptyPlate);
  });

  it("are those of one lead where one is asked for", () => {
    const led = (leadingLeg: "left" | "right") =>
      overlaySession(analysis, { ...twoLegs, alignedAt: "touchdown", leadingLeg })?.first.curves.map(
        (curve) => analysis.result.trials.find((trial) => trial.file === curve.file)?.leadingLeg,
      );
    // two of the four trials of the demo world led with each leg
    expect(led("left")).toEqual(["left", "left"]);
    expect(led("right")).toEqual(["right", "right"]);
  });

  it("are those from one box where one is asked for", () => {
    const from = (dropHeightMetres: number) =>
      overlaySession(analysis, { ...twoLegs, alignedAt: "touchdown", dropHeightMetres });
    expect(from(0.3)?.first.curves).toHaveLength(4);
    expect(from(0.4)).toBeUndefined();
  });
});
