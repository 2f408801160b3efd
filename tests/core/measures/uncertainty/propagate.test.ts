import { expect, test } from "vitest";
import type { InputUncertainties } from "../../../../core/events/input-uncertainties.ts";
import type { JumpEvents } from "../../../../core/events/jump-events.ts";
import { integrate } from "../../../../core/events/kinematics.ts";
import type { MeasureContext } from "../../../../core/measures/raw-measure.ts";
import { propagate } from "../../../../core/measures/uncertainty/propagate.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";

// A body of 700 N on whom 1400 N act: nothing that the changes below move has to be looked for.
const force = new Float64Array(700).fill(1400);
const motion = integrate({ rateHz: 1000, force }, { start: 0, end: 700 }, 700, defaultSettings.gravity);
const inputs: InputUncertainties = {
  weightNewtons: 0,
  motion: [],
  onset: 0,
  takeoff: 2,
  touchdown: 3,
  fixed: new Set(),
};

/** The uncertainty of a value that only the given events make. */
function uncertaintyOf(events: JumpEvents, made: (events: JumpEvents) => number): number {
  const context: MeasureContext = {
    jump: { test: "dropLanding", motion, anchor: { kind: "onset" }, events, contacts: [] },
    limb: "both",
    limbs: [],
    noiseNewtons: 2,
    zeroNewtons: 0,
  };
  const measure = ({ jump }: MeasureContext) => [
    { id: "peakLandingForce" as const, side: "both" as const, value: made(jump.events), noise: 0 },
  ];
  return propagate(context, measure(context), inputs, measure, defaultSettings)[0]!;
}

test("A touchdown is moved out of the contact and a take-off too, by their own uncertainties", () => {
  const before = uncertaintyOf({ touchdown: 400 }, ({ touchdown }) => Math.max(0, 400 - touchdown!));
  const behind = uncertaintyOf({ touchdown: 400 }, ({ touchdown }) => Math.max(0, touchdown! - 400));
  expect([before, behind]).toEqual([3, 0]);
  const afterTakeoff = uncertaintyOf({ takeoff: 400 }, ({ takeoff }) => Math.max(0, takeoff! - 400));
  expect(afterTakeoff).toBe(2);
});

test("A force that changes on one side of the lowest position alone is as uncertain whichever side that is", () => {
  const both = uncertaintyOf({ lowestPosition: 400 }, ({ lowestPosition }) => lowestPosition!);
  const before = uncertaintyOf({ lowestPosition: 400 }, ({ lowestPosition }) => Math.min(400, lowestPosition!));
  const behind = uncertaintyOf({ lowestPosition: 400 }, ({ lowestPosition }) => Math.max(400, lowestPosition!));
  expect(both).toBeGreaterThan(0);
  // The mean of both squares, one of which is zero.
  expect(before).toBeCloseTo(both / Math.SQRT2, 9);
  expect(behind).toBeCloseTo(both / Math.SQRT2, 9);
});
