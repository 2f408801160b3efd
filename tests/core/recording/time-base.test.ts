import { expect, test } from "vitest";
import type { LayoutAnswers } from "../../../core/recording/reading-statements.ts";
import { told } from "../../told.ts";
import { codesOf, readText } from "./recording-text.ts";

/** Reads stamps beside a constant total force in newtons. */
function readStamps(stamps: readonly (string | number)[], name = "time (s)", answers: LayoutAnswers = {}) {
  const rows = stamps.map((stamp) => `${stamp};700.5\n`).join("");
  return readText(`${name};total (N)\n${rows}`, answers);
}

const count = 300;
const numbers = Array.from({ length: count }, (_, index) => index);
const stampsAt = (rateHz: number, decimals: number): string[] =>
  numbers.map((index) => (index / rateHz).toFixed(decimals));

// By hand: the rate the stamps were made with. Whole rates are found although the stamps are rounded.
test.each([
  [1000, 3],
  [1000, 6],
  [600, 3],
  [600, 4],
  [600, 12],
  [800, 3],
  [1200, 4],
  [2000, 4],
  [500, 3],
])("%d Hz printed to %d decimals are found exactly and without a finding", (rateHz, decimals) => {
  const read = readStamps(stampsAt(rateHz, decimals));
  expect(read.findings).toEqual([]);
  expect(read.recording?.rateHz).toBe(rateHz);
});

test("a rate that is no whole number stays what the stamps say", () => {
  const relativeTolerance = 1e-7; // stamps of nine decimals over 0.3 s
  const { recording } = readStamps(stampsAt(1017.25, 9));
  expect(Math.abs((recording?.rateHz ?? 0) / 1017.25 - 1)).toBeLessThan(relativeTolerance);
});

test("milliseconds are taken from the header, or where seconds would be no recording", () => {
  expect(readStamps(numbers, "time (ms)").recording?.rateHz).toBe(1000);
  expect(
    readStamps(
      numbers.map((index) => 2 * index),
      "time",
    ).recording?.rateHz,
  ).toBe(500);
});

test("a time unit that is none is asked about, and a stated rate that agrees settles it", () => {
  expect(codesOf(readStamps(stampsAt(1000, 3), "time (q)"))).toEqual(["rate-missing:refusal"]);
  expect(readStamps(stampsAt(1000, 3), "time (q)", { rateHz: 1000 }).recording?.rateHz).toBe(1000);
});

test("rows counted from 0 or 1 need a stated rate", () => {
  expect(codesOf(readStamps(numbers, "sample"))).toEqual(["rate-missing:refusal"]);
  expect(codesOf(readStamps(numbers, "time"))).toEqual(["rate-missing:refusal"]);
  expect(codesOf(readStamps(numbers, "n°"))).toEqual(["rate-missing:refusal"]);
  const read = readStamps(numbers, "sample", { rateHz: 1200 });
  expect(read.findings).toEqual([]);
  expect(read.recording).toMatchObject({ rateHz: 1200, timeOriginSeconds: 0 });
});

test("a stated rate that agrees is silent, one that is slightly off is warned of, another one is refused", () => {
  expect(readStamps(stampsAt(1000, 3), "time (s)", { rateHz: 1000 }).findings).toEqual([]);
  const slightly = readStamps(stampsAt(1000, 3), "time (s)", { rateHz: 1008 });
  expect(codesOf(slightly)).toEqual(["rate-contradicts:warning"]);
  expect(slightly.recording?.rateHz).toBe(1000);
  const other = readStamps(stampsAt(1000, 3), "time (s)", { rateHz: 500 });
  expect(codesOf(other)).toEqual(["rate-contradicts:refusal"]);
  expect(told(other.findings[0])?.action).toBe("Correct the stated rate, or leave it out to use the time column.");
  expect(other.findings[0]?.answers).toEqual([{ rateHz: 1000 }, { rateHz: 500, columns: { time: "none" } }]);
});

test("a missing sample is a gap with its line, also between rounded stamps", () => {
  for (const [rateHz, decimals] of [
    [1000, 3],
    [600, 4],
  ] as const) {
    const stamps = stampsAt(rateHz, decimals).filter((_, index) => index !== 100);
    const read = readStamps(stamps);
    expect(codesOf(read)).toEqual(["gap:refusal"]);
    expect(told(read.findings[0])?.where).toBe("line 102");
  }
});

test("a missing sample that hides among coarsely rounded stamps is found as an uneven time base", () => {
  for (const rateHz of [600, 800, 900]) {
    for (let missing = 1; missing < count - 1; missing += 7) {
      const read = readStamps(stampsAt(rateHz, 3).filter((_, index) => index !== missing));
      expect(read.recording, `${rateHz} Hz without sample ${missing}`).toBeUndefined();
    }
  }
});

test("a repeated or backward stamp is refused with its line", () => {
  const stamps = stampsAt(1000, 3);
  const repeated = readStamps([...stamps.slice(0, 101), ...stamps.slice(100)]);
  expect(codesOf(repeated)).toEqual(["time-uneven:refusal"]);
  expect(told(repeated.findings[0])?.where).toBe("line 103");
  const swapped = [...stamps];
  [swapped[50], swapped[51]] = [swapped[51]!, swapped[50]!];
  expect(codesOf(readStamps(swapped))).toContain("time-uneven:refusal");
});

test("small jitter is warned of, a change of rate is refused", () => {
  const jittered = numbers.map((index) => (index / 1000 + (index === 40 ? 0.00004 : 0)).toFixed(6));
  expect(codesOf(readStamps(jittered))).toEqual(["time-uneven:warning"]);
  const changed = numbers.map((index) => (index < 150 ? index / 1000 : 0.15 + (index - 150) / 900).toFixed(6));
  expect(codesOf(readStamps(changed))).toEqual(["time-uneven:refusal"]);
});

test("stamps coarser than the time step are refused because gaps cannot be seen", () => {
  expect(codesOf(readStamps(stampsAt(1000, 2)))).toEqual(["time-uneven:refusal"]);
});

test("a time column that does not rise is refused", () => {
  expect(codesOf(readStamps(numbers.map(() => "0.5")))).toEqual(["time-uneven:refusal"]);
});

test("a rate no force plate has is refused as a wrong unit", () => {
  expect(codesOf(readStamps(stampsAt(1000, 3), "time (ms)"))).toEqual(["rate-contradicts:refusal"]);
  expect(codesOf(readStamps(numbers, "time (s)"))).toEqual(["rate-contradicts:refusal"]);
});

test("a wrong unit is refused with the unit that fits, and no rate-low beside it", () => {
  // By hand: one row a second is 1 Hz; the same numbers in milliseconds are 1000 Hz, in microseconds 1 MHz.
  const { findings } = readStamps(numbers, "time (s)");
  expect(findings.map((each) => told(each)).map(({ message }) => message)).toEqual([
    "The time column in seconds gives 1 Hz, outside 10 to 20000 Hz; as milliseconds it would be 1000 Hz.",
  ]);
  expect(told(findings[0])?.action).toContain("or state the rate and leave the time column out.");
  expect(findings[0]?.answers).toEqual([{ rateHz: 1000, columns: { time: "none" } }]);
  expect(told(readStamps(stampsAt(1000, 3), "time (ms)").findings[0])?.message).toContain(
    "as seconds it would be 1000 Hz",
  );
});

test("1200 Hz printed to the millisecond is found when one whole rate explains every stamp, and that is said", () => {
  for (const rateHz of [1050, 1100, 1200, 1500, 1800]) {
    const read = readStamps(stampsAt(rateHz, 3));
    expect(codesOf(read), `${rateHz} Hz`).toEqual(["time-uneven:note"]);
    expect(read.recording?.rateHz).toBe(rateHz);
  }
  // At 2000 Hz two samples share every stamp, and a missing one could hide.
  expect(codesOf(readStamps(stampsAt(2000, 3)))).toEqual(["time-uneven:refusal"]);
});

test("a missing or doubled sample among stamps coarser than the step is found wherever it is", () => {
  const whole = stampsAt(1200, 3);
  for (let place = 12; place < count - 12; place += 11) {
    const missing = readStamps(whole.filter((_, index) => index !== place));
    expect(missing.recording, `without sample ${place}`).toBeUndefined();
    const doubled = readStamps(whole.flatMap((stamp, index) => (index === place ? [stamp, stamp] : [stamp])));
    expect(doubled.recording, `sample ${place} twice`).toBeUndefined();
  }
});

test("microseconds are taken from the header, or where no other unit makes a recording", () => {
  const micro = numbers.map((index) => 1000 * index);
  expect(readStamps(micro, "time (µs)").reading).toMatchObject({ rateHz: 1000, timeUnit: "µs" });
  expect(readStamps(micro, "time [us]").recording?.rateHz).toBe(1000);
  expect(readStamps(micro, "time").recording?.rateHz).toBe(1000);
});

test("a step that is a recording in two units is asked about, and a stated rate settles it", () => {
  const text = numbers.map((index) => (0.05 * index).toFixed(2));
  expect(codesOf(readStamps(text, "time"))).toEqual(["rate-missing:refusal"]);
  expect(readStamps(text, "time", { rateHz: 20 }).reading?.timeUnit).toBe("s");
  expect(readStamps(text, "time", { rateHz: 20_000 }).reading?.timeUnit).toBe("ms");
});

test("clock times are a time column in seconds, also over midnight", () => {
  const clock = (index: number): string => {
    const seconds = (86_399.9 + index / 1000) % 86_400;
    const part = (value: number): string => String(Math.floor(value)).padStart(2, "0");
    return `${part(seconds / 3600)}:${part((seconds / 60) % 60)}:${(seconds % 60).toFixed(3).padStart(6, "0")}`;
  };
  const read = readStamps(numbers.map(clock), "clock");
  expect(read.findings).toEqual([]);
  expect(read.reading).toMatchObject({ rateHz: 1000, timeUnit: "s" });
  expect(read.reading?.columns[0]?.role).toBe("time");
});

test("a time column that a person leaves out is not used, and its gaps can then not be seen, which is said", () => {
  const stamps = stampsAt(1000, 3).filter((_, index) => index !== 100);
  const read = readStamps(stamps, "time (s)", { time: "none", rateHz: 1000 });
  expect(codesOf(read)).toEqual(["time-left-out:warning"]);
  expect(read.recording).toMatchObject({ rateHz: 1000, sampleCount: count - 1 });
  expect(codesOf(readStamps(stamps, "time (s)", { time: "none" }))).toContain("rate-missing:refusal");
});

test("a counter that skips while time runs on is warned of with its line; one that starts again is not", () => {
  const withCounter = (counter: (index: number) => number) =>
    readText(
      `sample,time (s),total (N)\n${numbers.map((index) => `${counter(index)},${(index / 1000).toFixed(3)},700.5\n`).join("")}`,
    );
  expect(withCounter((index) => index + 1).findings).toEqual([]);
  expect(withCounter((index) => index % 256).findings).toEqual([]);
  expect(withCounter((index) => Math.floor(index / 10)).findings).toEqual([]);
  const skipping = withCounter((index) => (index < 100 ? index : index + 3));
  expect(codesOf(skipping)).toEqual(["gap:warning"]);
  expect(told(skipping.findings[0])?.where).toBe("line 102");
});

test("time that runs backwards once is named at its line and makes no gaps elsewhere", () => {
  const read = readStamps(Array.from({ length: 160 }, (_, row) => ((row < 100 ? row : row - 60) / 500).toFixed(3)));
  expect(codesOf(read)).toEqual(["time-uneven:refusal"]);
  expect(told(read.findings[0])?.where).toBe("line 102"); // the names, 100 rising rows, then the step back
});

test("seconds since 1970 are read to the decimals they are printed with", () => {
  const read = readStamps(numbers.map((row) => (1768644903 + row / 1000).toFixed(3)));
  expect(codesOf(read)).toEqual([]);
  expect(read.recording).toMatchObject({ rateHz: 1000, timeOriginSeconds: 1768644903 });
});
