import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { clippedSpans } from "../../../core/trial/clipping.ts";
import { cutJumps } from "../../../core/trial/cut-trials.ts";
import { segmentLoad } from "../../../core/trial/segment-load.ts";
import { weighingWindow } from "../../../core/trial/weighing-window.ts";
import { stretches } from "./standing.ts";

// Built by hand: what must come out follows from what was put in. Quiet standing is cut short by the running mean
// (25 ms) and the set-back (30 ms) at each moving end, so its ends are held to 60 ms.
const endSamples = 60;
const rateHz = 1000;
const weight = 700;
const dip = [0.3, 350] as const;
const push = [0.3, 1500] as const;
const flight = [0.45, 0] as const;
const landing = [0.2, 1600] as const;
const jump = [dip, push, flight, landing] as const;

function cut(parts: readonly (readonly [number, number])[]) {
  const total = stretches(parts);
  const segments = segmentLoad(total, rateHz, defaultSettings);
  return { total, segments, jumps: cutJumps({ total, rateHz, segments, settings: defaultSettings }) };
}

describe("one jump between two stretches of standing", () => {
  const { segments, jumps } = cut([[2, weight], ...jump, [2, weight]]);
  test("has the standing load and one flight at its place", () => {
    expect(segments.steadyLoad).toBe(weight);
    expect(jumps.map((each) => each.flight)).toEqual([{ start: 2600, end: 3050 }]);
  });
  test("has quiet standing before the dip and after the landing", () => {
    const [only] = jumps;
    expect(only?.quietBefore).toHaveLength(1);
    expect(Math.abs(only!.quietBefore[0]!.end - 2000)).toBeLessThanOrEqual(endSamples);
    expect(Math.abs(only!.quietAfter.start - 3250)).toBeLessThanOrEqual(endSamples);
  });
});

test("Two jumps with quiet standing between them are two trials that share the standing", () => {
  const { jumps } = cut([[2, weight], ...jump, [1.5, weight], ...jump, [2, weight]]);
  expect(jumps).toHaveLength(2);
  expect(jumps[0]!.laterFlights).toEqual([]);
  expect(jumps[0]!.span.end).toBeGreaterThan(jumps[1]!.span.start);
});

test("A short flight right after the landing belongs to the same trial", () => {
  const { jumps } = cut([[2, weight], ...jump, [0.15, 0], [0.3, 900], [2, weight]]);
  expect(jumps).toHaveLength(1);
  expect(jumps[0]!.laterFlights).toHaveLength(1);
});

test("Stepping on and stepping off are no jumps: no push comes before the empty plate", () => {
  const { jumps, segments } = cut([
    [1, 0],
    [3, weight],
    [1, 0],
  ]);
  expect(jumps).toEqual([]);
  expect(segments.empty).toHaveLength(2);
});

test("A jump that lands beside the plate is cut, and its landing is known to be missing", () => {
  const { jumps } = cut([[2, weight], dip, push, [3, 0]]);
  expect(jumps.map((each) => each.landed)).toEqual([false]);
});

test("A plate that shows 25 N when empty is empty all the same", () => {
  const { segments, jumps } = cut([
    [2, weight + 25],
    [0.3, 375],
    [0.3, 1525],
    [0.45, 25],
    [0.2, 1625],
    [2, weight + 25],
  ]);
  expect(segments.emptyLevel).toBe(25);
  expect(jumps).toHaveLength(1);
});

test("Nobody standing still has no standing load", () => {
  const moving = Float64Array.from({ length: 3000 }, (_, index) => 700 + 300 * Math.sin(index / 30));
  expect(segmentLoad(moving, rateHz, defaultSettings).steadyLoad).toBe(0);
});

describe("the weighing window", () => {
  test("is the steadiest second: standing disturbed at first is not used", () => {
    const total = stretches([[3, weight]]).map((newtons, index) => newtons + (index < 1500 ? 8 * Math.sin(index) : 0));
    const window = weighingWindow(total, rateHz, [{ start: 0, end: 3000 }], defaultSettings);
    expect(window!.end - window!.start).toBe(1000);
    expect(window!.start).toBeGreaterThanOrEqual(1499);
  });
  test("is the latest of windows that are steady alike", () => {
    const window = weighingWindow(stretches([[3, weight]]), rateHz, [{ start: 0, end: 3000 }], defaultSettings);
    expect(window).toEqual({ start: 2000, end: 3000 });
  });
  test("before a jump is the steadiest, however little steadier it is", () => {
    const size = (index: number): number => (index < 500 ? 8 : index < 1800 ? 1.1 : 1);
    const total = stretches([[3, weight]]).map(
      (newtons, index) => newtons + (index % 2 === 0 ? size(index) : -size(index)),
    );
    const quiet = [{ start: 0, end: 3000 }];
    expect(weighingWindow(total, rateHz, quiet, defaultSettings)).toEqual({ start: 2000, end: 3000 });
  });
  test("is the longest stretch where none lasts a second, and absent where nobody stands still", () => {
    const quiet = [
      { start: 0, end: 200 },
      { start: 500, end: 900 },
    ];
    expect(weighingWindow(stretches([[1, weight]]), rateHz, quiet, defaultSettings)).toEqual({ start: 500, end: 900 });
    expect(weighingWindow(stretches([[1, weight]]), rateHz, [], defaultSettings)).toBeUndefined();
  });
});

describe("an exceeded range", () => {
  test("shows as five or more equal samples at the maximum", () => {
    const force = stretches([
      [1, weight],
      [0.005, 2000],
      [1, weight],
    ]);
    expect(clippedSpans(force, weight, defaultSettings)).toEqual([{ start: 1000, end: 1005 }]);
  });
  test("does not show in four equal samples, nor in standing itself", () => {
    const force = stretches([
      [1, weight],
      [0.004, 2000],
      [1, weight],
    ]);
    expect(clippedSpans(force, weight, defaultSettings)).toEqual([]);
    expect(clippedSpans(stretches([[1, weight]]), weight, defaultSettings)).toEqual([]);
  });
  test("does not show in a leaning top that a converter's coarse steps make flat", () => {
    // In steps of 1 N: 13 N lower three samples before six equal ones, 3 N lower three samples behind them: 8 on average.
    const top = [1987, 1991, 1996, 2000, 2000, 2000, 2000, 2000, 2000, 1999, 1998, 1997];
    const force = Float64Array.from([...stretches([[1, weight]]), ...top, ...stretches([[1, weight]])]);
    expect(clippedSpans(force, weight, defaultSettings)).toEqual([]);
    const cut = top.map((newtons) => (newtons < 2000 ? newtons - 8 : newtons));
    const clipped = Float64Array.from([...stretches([[1, weight]]), ...cut, ...stretches([[1, weight]])]);
    expect(clippedSpans(clipped, weight, defaultSettings)).toEqual([{ start: 1003, end: 1009 }]);
  });
});

test("A short crossing of the standing load while a landing settles does not hide the standing behind it", () => {
  const { jumps } = cut([[2, weight], ...jump, [0.25, weight], [0.2, 400], [0.2, 1100], [3, weight]]);
  expect(jumps).toHaveLength(1);
  expect(jumps[0]!.quietAfter.start).toBeGreaterThan(3600);
  expect(jumps[0]!.quietAfter.end - jumps[0]!.quietAfter.start).toBeGreaterThan(2500);
});
