import { describe, expect, test } from "vitest";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../core/simulate/draw-jump.ts";
import { measured, onlyTrial } from "../core/simulated/simulated-trial.ts";

// Identities of jumping with level take-off and landing at g = 9.80665 m/s² (Linthorne 2001, Am J Phys 69:1198–1204,
// for the methods; the figures worked out from v²/2g and 2v/g).
const printed = 5e-6;

const rows = [
  { velocity: 2.0, heightMetres: 0.20394, flightSeconds: 0.40789 },
  { velocity: 2.5, heightMetres: 0.31866, flightSeconds: 0.50986 },
  { velocity: 2.7, heightMetres: 0.37169, flightSeconds: 0.55065 },
  { velocity: 3.0, heightMetres: 0.45887, flightSeconds: 0.61183 },
] as const;

describe.each(rows)("a jump that leaves the ground at $velocity m/s", ({ velocity, heightMetres, flightSeconds }) => {
  const simulated = simulateCountermovementJump({
    ...drawJump(11, { limb: "both", plates: "one", kind: "clean", ratesHz: [1000], heightMetres: [0.3, 0.31] }),
    jumpHeightMetres: velocity ** 2 / (2 * 9.80665),
    touchdownLowerMetres: 0,
  });
  const trial = onlyTrial(simulated, "both");

  test(`rises ${heightMetres} m and flies ${flightSeconds} s in truth`, () => {
    expect(Math.abs(simulated.truth.jumpHeightMetres - heightMetres)).toBeLessThan(printed);
    expect(Math.abs(simulated.truth.flightSeconds - flightSeconds)).toBeLessThan(printed);
  });

  test("has a height by flight time of g·t²/8, whatever the flight time", () => {
    const byFlight = (9.80665 * measured(trial, "flightTime") ** 2) / 8;
    expect(Math.abs(measured(trial, "jumpHeightFlightTime") - byFlight)).toBeLessThan(1e-12);
  });

  test("has unweighting and braking net impulses of the same size (McMahon et al. 2018: velocity starts and turns at zero)", () => {
    const sum = measured(trial, "unweightingNetImpulse") + measured(trial, "brakingNetImpulse");
    expect(Math.abs(sum / measured(trial, "brakingNetImpulse"))).toBeLessThan(1e-4);
  });
});
