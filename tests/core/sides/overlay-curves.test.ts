import { describe, expect, it } from "vitest";
import type { Side } from "../../../core/ground/limb.ts";
import { type AlignableCurve, overlayCurves } from "../../../core/sides/overlay-curves.ts";

/** Rounding of one interpolation. */
const digits = 9;

const leftFirst = [{ side: "left" }, { side: "right" }] as const;
const rightFirst = [{ side: "right" }, { side: "left" }] as const;

function curve(changes: Partial<AlignableCurve & { readonly side: Side }> = {}): AlignableCurve {
  return {
    file: "a.csv",
    trial: 1,
    side: "left",
    rateHz: 100,
    // A straight line, so that every value between samples is known by hand.
    force: Float64Array.from({ length: 101 }, (_, at) => 10 * at),
    weightNewtons: 500,
    alignSample: 50,
    startSample: 10,
    endSample: 60,
    ...changes,
  } as AlignableCurve;
}

function at(values: Float64Array, times: Float64Array, time: number): number {
  const position = times.findIndex((each) => Math.abs(each - time) < 1e-9);
  return values[position] ?? Number.NaN;
}

describe("curves laid over each other", () => {
  it("share a time axis with the event at zero, at the highest rate", () => {
    const made = overlayCurves([curve(), curve({ side: "right", rateHz: 50, alignSample: 30 })], rightFirst, "takeoff");
    const times = made?.timeSeconds ?? new Float64Array();
    expect(made?.first.side).toBe("right");
    // By hand: from min(−40/100, −20/50) = −0.4 s to max(10/100, 30/50) = 0.6 s in steps of 1/100 s.
    expect(times).toHaveLength(101);
    expect(times[0]).toBeCloseTo(-0.4, digits);
    expect(times.at(-1)).toBeCloseTo(0.6, digits);
    expect(times.includes(0)).toBe(true);
  });

  it("follow the straight line between samples at a fractional event, in body weights", () => {
    const made = overlayCurves([curve({ alignSample: 50.25 }), curve({ side: "right" })], leftFirst, "takeoff");
    const values = made?.first.curves[0]?.values ?? new Float64Array();
    // By hand: force 10·50.25 N over 500 N at the event; 10·48.25/500 twenty milliseconds before.
    expect(at(values, made?.timeSeconds ?? values, 0)).toBeCloseTo(1.005, digits);
    expect(at(values, made?.timeSeconds ?? values, -0.02)).toBeCloseTo(0.965, digits);
  });

  it("have a mean and a standard deviation only where every trial of the side has data", () => {
    const low = curve({ startSample: 30 });
    const high = curve({ file: "b.csv", force: curve().force.map((each) => each + 100) });
    const made = overlayCurves([low, high, curve({ side: "right" })], leftFirst, "onset");
    const times = made?.timeSeconds ?? new Float64Array();
    const first = made?.first;
    expect(first?.curves.map((each) => each.file)).toEqual(["a.csv", "b.csv"]);
    // By hand: 1.0 and 1.2 body weights at the event, mean 1.1, SD 0.2/√2.
    expect(at(first?.mean ?? times, times, 0)).toBeCloseTo(1.1, digits);
    expect(at(first?.standardDeviation ?? times, times, 0)).toBeCloseTo(0.2 / Math.SQRT2, digits);
    // The first trial starts 0.2 s before the event, the second 0.4 s.
    expect(at(first?.mean ?? times, times, -0.3)).toBeNaN();
    expect(at(first?.standardDeviation ?? times, times, -0.3)).toBeNaN();
    expect(at(first?.curves[1]?.values ?? times, times, -0.3)).toBeCloseTo(0.6, digits);
    expect(at(first?.curves[0]?.values ?? times, times, -0.3)).toBeNaN();
  });

  it("have no band from a single trial", () => {
    const made = overlayCurves([curve(), curve({ side: "right" })], leftFirst, "onset");
    expect(made?.first.standardDeviation).toHaveLength(0);
    expect(made?.first.mean).toEqual(made?.first.curves[0]?.values);
  });

  it("stay within two thousand points however long and fast the trials are", () => {
    const long = curve({
      rateHz: 2000,
      force: new Float64Array(20_001),
      alignSample: 4000,
      startSample: 0,
      endSample: 20_000,
    });
    const made = overlayCurves(
      [long, curve({ ...long, side: "right" } as AlignableCurve & { side: Side })],
      leftFirst,
      "takeoff",
    );
    expect(made?.timeSeconds.length).toBeGreaterThan(1900);
    expect(made?.timeSeconds.length).toBeLessThanOrEqual(2000);
  });

  it("do not exist where a side has no trial", () => {
    expect(overlayCurves([curve()], leftFirst, "takeoff")).toBeUndefined();
    expect(overlayCurves([], leftFirst, "takeoff")).toBeUndefined();
  });
});
