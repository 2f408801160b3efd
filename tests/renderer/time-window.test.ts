import { describe, expect, it } from "vitest";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { jumpOnly, panned, wholeTrial, zoomed } from "../../renderer/traces/time-window.ts";
import { exampleTrial } from "./example-session.ts";

const nothing = new Float64Array(0);
const trace: TrialTrace = {
  trial: exampleTrial(),
  rateHz: 1000,
  startSample: 500,
  total: new Float64Array(5001),
  plates: [],
  filtered: nothing,
  velocity: nothing,
  displacement: nothing,
  power: nothing,
  phases: [],
};

describe("the stretch of time that is drawn", () => {
  it("is the jump with 0.4 s around its events at first", () => {
    // by hand: onset 1.03 s, landing end 2.5 s
    expect(jumpOnly(trace).from).toBeCloseTo(0.63, 9);
    expect(jumpOnly(trace).to).toBeCloseTo(2.9, 9);
  });

  it("is the whole trial where no event was found", () => {
    const eventless = { ...trace, trial: exampleTrial({ events: [] }) };
    expect(jumpOnly(eventless)).toEqual(wholeTrial(trace));
    // by hand: 5001 samples at 1000 Hz from sample 500
    expect(wholeTrial(trace)).toEqual({ from: 0.5, to: 5.5 });
  });

  it("never leaves the trial, however far it is widened or moved", () => {
    const whole = wholeTrial(trace);
    expect(zoomed({ from: 1, to: 3 }, 10, whole)).toEqual(whole);
    expect(panned({ from: 4, to: 5 }, 3, whole)).toEqual({ from: 4.5, to: 5.5 });
    expect(panned({ from: 1, to: 2 }, -3, whole)).toEqual({ from: 0.5, to: 1.5 });
  });
});
