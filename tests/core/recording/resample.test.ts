import fc from "fast-check";
import { expect, test } from "vitest";
import { resample } from "../../../core/recording/resample.ts";
import { told } from "../../told.ts";
import { codesOf, lines, readText } from "./recording-text.ts";

const count = 2000;

/** A straight ramp of force against uneven time: exact under straight lines between samples. */
function rampText(secondsAt: (index: number) => number, decimals = 7): string {
  return `time (s),force (N)\n${lines(count, (index) => {
    const seconds = Number(secondsAt(index).toFixed(decimals));
    return `${seconds.toFixed(decimals)},${(500 + 100 * seconds).toFixed(9)}`;
  })}`;
}

const drifting = (index: number): number => index / 1000 + 0.002 * Math.sin(index / 200);

test("uneven stamps are refused, and put on an even time base only when asked, which is said", () => {
  const text = rampText(drifting);
  const refused = readText(text);
  expect(codesOf(refused)).toEqual(["time-uneven:refusal"]);
  expect(told(refused.findings[0])?.where).toMatch(/^line \d+$/);
  expect(told(refused.findings[0])?.action).toContain("or ask for an even time base.");
  expect(refused.findings[0]?.answers).toEqual([{ resample: true }]);

  const read = readText(text, { resample: true });
  expect(codesOf(read)).toEqual(["time-uneven:warning", "resampled:note"]);
  expect(read.reading?.resampledFromHz).toBeGreaterThan(990);
  const { rateHz = 0, plates = [] } = read.recording ?? {};
  expect(Number.isInteger(rateHz)).toBe(true);
  const roundingNewtons = 1e-6; // nine decimals of force, seven of time
  const force = plates[0]?.force ?? new Float64Array(0);
  const worst = force.reduce(
    (most, value, index) => Math.max(most, Math.abs(value - (500 + (100 * index) / rateHz))),
    0,
  );
  expect(worst).toBeLessThan(roundingNewtons);
  expect(read.recording?.sampleCount).toBe(force.length);
});

test("a wanted rate is met from even samples as well, with and without a time column", () => {
  const stamped = readText(
    rampText((index) => index / 1000),
    { resampleHz: 500 },
  );
  expect(codesOf(stamped)).toEqual(["resampled:note"]);
  expect(stamped.recording).toMatchObject({ rateHz: 500, sampleCount: 1000 });
  expect(stamped.recording?.plates[0]?.force[250]).toBe(550);
  const bare = readText(`force (N)\n${lines(count, (index) => (500 + index / 10).toFixed(1))}`, {
    rateHz: 1000,
    resampleHz: 500,
  });
  expect(bare.recording).toMatchObject({ rateHz: 500, sampleCount: 1000 });
  expect(bare.reading).toMatchObject({ rateHz: 500, resampledFromHz: 1000 });
});

test("nothing is resampled where the samples lie on the time base already", () => {
  const text = rampText((index) => index / 1000);
  expect(readText(text, { resample: true })).toEqual({ ...readText(text) });
  expect(readText(text, { resampleHz: 1000 }).findings).toEqual([]);
});

test("no line is drawn across a gap, over repeated or over backward stamps", () => {
  const gap = rampText((index) => drifting(index) + (index > 900 ? 0.05 : 0));
  const read = readText(gap, { resample: true });
  expect(codesOf(read)).toEqual(["gap:refusal"]);
  expect(told(read.findings[0])?.where).toBe("line 903");
  expect(read.recording).toBeUndefined();
  const repeated = rampText((index) => (index === 900 ? drifting(899) : drifting(index)));
  expect(codesOf(readText(repeated, { resample: true }))).toContain("time-uneven:refusal");
});

test("a higher rate does not hide that the recording was slow", () => {
  const slow = `time (s),force (N)\n${lines(400, (index) => `${(index / 100).toFixed(2)},${700 + (index % 3)}`)}`;
  expect(codesOf(readText(slow, { resampleHz: 1000 }))).toEqual(["rate-low:warning", "resampled:note"]);
});

test("a wanted rate that no force plate has is refused", () => {
  expect(codesOf(readText(rampText(drifting), { resampleHz: 1 }))).toEqual(["rate-contradicts:refusal"]);
});

test("straight lines stay between their ends, whatever the samples and the rates", () => {
  const values = fc.array(fc.double({ min: -3000, max: 3000, noNaN: true }), { minLength: 2, maxLength: 40 });
  const rate = fc.integer({ min: 10, max: 5000 });
  fc.assert(
    fc.property(values, rate, rate, (samples, fromHz, toHz) => {
      const made = resample(Float64Array.from(samples), { fromHz, toHz });
      const within = made.every(
        (value) => value >= Math.min(...samples) - 1e-9 && value <= Math.max(...samples) + 1e-9,
      );
      return (
        within &&
        made[0] === samples[0] &&
        made.length === Math.floor(((samples.length - 1) / fromHz) * toHz + 1e-6) + 1
      );
    }),
    { numRuns: 500 },
  );
});

test("samples put on a finer time base pass through every sample they were made from", () => {
  const samples = Float64Array.from({ length: 50 }, (_, index) => 700 + 40 * Math.sin(index));
  const fine = resample(samples, { fromHz: 500, toHz: 2000 });
  samples.forEach((value, index) => {
    expect(fine[4 * index]).toBe(value);
  });
});
