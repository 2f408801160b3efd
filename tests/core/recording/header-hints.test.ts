import fc from "fast-check";
import { expect, test } from "vitest";
import { told } from "../../told.ts";
import { codesOf, lines, readText } from "./recording-text.ts";

const body = lines(50, (index) => `${(index / 1000).toFixed(3)};${300 + index}.5;${400 + index}.5`);
const names = "time (s);left (N);right (N)\n";

/** The hints of a header above a two-plate table, as [kind, value, line]. */
function hintsOf(header: string): unknown[] {
  const { reading } = readText(`${header}\n${names}${body}`);
  return (reading?.hints ?? []).map(({ kind, value, line }) => [kind, value, line]);
}

// By hand: what a reader of the line would say.
test.each([
  ["Sampling rate: 1000 Hz", "rate", 1000],
  ["Sample rate = 1 kHz", "rate", 1000],
  ["Fs: 1000 Hz", "rate", 1000],
  ["Hz: 1000", "rate", 1000],
  ["# Sampling frequency [Hz]: 1000", "rate", 1000],
  ["Abtastrate;1000;Hz", "rate", 1000],
  ["Fréquence d'échantillonnage : 1000 Hz", "rate", 1000],
  ["Frecuencia de muestreo: 1.000 Hz", "rate", undefined],
  ["Frecuencia de muestreo: 1 000 Hz", "rate", 1000],
  ["Frequenza di campionamento: 1000 Hz", "rate", 1000],
  ["Częstotliwość próbkowania: 1000 Hz", "rate", 1000],
  ["Samplingsfrekvens: 1000 Hz", "rate", 1000],
  ["サンプリング周波数: 1000 Hz", "rate", 1000],
  ["采样率: 1000 Hz", "rate", 1000],
  ["Sampling interval: 1 ms", "rate", 1000],
  ["Recorded at 1000 Hz by two plates", "rate", 1000],
  ["1000 Hz", "rate", 1000],
  ["1000 samples a second", "rate", 1000],
  ["Sampling rate: 1000 samples/s", "rate", 1000],
  ["Échantillonnage: 1000 échantillons par seconde", "rate", 1000],
  ["Body mass: 69.4 kg", "mass", 69.4],
  ["Masse (kg): 69,4", "mass", 69.4],
  ["Poids: 69,4 kg", "mass", 69.4],
  ["Masa corporal;69.4;kg", "mass", 69.4],
  ["Date: 2026-10-14", "date", "2026-10-14"],
  ["Datum: 14.10.2026", "date", "2026-10-14"],
  ["Date: 14/10/2026", "date", "2026-10-14"],
  ["Side: right", "side", "right"],
  ["Bein: links", "side", "left"],
  ["Jambe: droite", "side", "right"],
  ["Pierna: ambas", "side", "both"],
  ["Test: countermovement jump", "test", "countermovementJump"],
  ["Test: Drop-Jump", "test", "dropJump"],
  ["Athlete code: GH-07", "athlete", "GH-07"],
  ["Proband: GH-07", "athlete", "GH-07"],
  ["Drop height: 30 cm", "dropHeight", 0.3],
  ["Fallhöhe: 0,30 m", "dropHeight", 0.3],
  ["Hauteur de chute: 300 mm", "dropHeight", 0.3],
  ["Altura de caída: 30 cm", "dropHeight", 0.3],
  ["Units: N", "unit", "N"],
  ["Krafteinheit: kN", "unit", "kN"],
  ["Number of samples: 50", "samples", 50],
  ["Anzahl Messwerte: 50", "samples", 50],
  ["Nombre d'échantillons: 50", "samples", 50],
] as const)("the header line %j says %s %s", (line, kind, value) => {
  expect(hintsOf(line)).toEqual([[kind, value, 1]]);
});

test.each([
  "Filter frequency: 50 Hz",
  "Low-pass cut-off: 20 Hz",
  "Video sampling rate: 100 Hz",
  "Involved side: right",
  "Date of birth: 2003-05-01",
  "Geburtsdatum: 01.05.2003",
  "Sampling time: 5 s",
  "Mass: 70 constructor",
  "The lamp flickers at 50 Hz",
  "Remark: all is well",
  "Rate of perceived exertion: 7",
])("the header line %j is no hint about the recording", (line) => {
  expect(hintsOf(line)).toEqual([]);
});

test("a hint that does not say everything is kept without a value: no unit, a date with two readings, an unknown test", () => {
  const { reading } = readText(`Mass: 70\nDate: 04/05/2026\nTest: day 2\n${names}${body}`);
  expect(reading?.hints).toEqual([
    { kind: "mass", numberWithoutUnit: 70, unit: "kg", line: 1, written: "Mass: 70" },
    { kind: "date", unit: "", line: 2, written: "Date: 04/05/2026" },
    { kind: "test", unit: "", line: 3, written: "Test: day 2" },
  ]);
});

test("a day that no calendar has is no date", () => {
  expect(hintsOf("Date: 2026-02-29")).toEqual([["date", undefined, 1]]);
  expect(hintsOf("Date: 29.02.2028")).toEqual([["date", "2028-02-29", 1]]);
});

test("every hint keeps its line and its wording", () => {
  const { reading } = readText(`Grynnholm HK (simulated)\n\n# Sampling rate:  1000 Hz\nLeg: left\n${names}${body}`);
  expect(reading?.hints.map(({ line, written }) => [line, written])).toEqual([
    [3, "# Sampling rate:  1000 Hz"],
    [4, "Leg: left"],
  ]);
});

const forces = `left (N);right (N)\n${lines(50, (index) => `${300 + index}.5;${400 + index}.5`)}`;

test("a rate in the header is the rate where no time column stands, and the reading names its line", () => {
  const read = readText(`Athlete: GH-07\nSampling rate: 1200 Hz\n${forces}`);
  expect(read.findings).toEqual([]);
  expect(read.recording?.rateHz).toBe(1200);
  expect(read.reading).toMatchObject({ rateFrom: "header", rateSource: "line 2: Sampling rate: 1200 Hz" });
});

test("prose right above names and a row of units is read, the names and units are not", () => {
  const rows = lines(50, (index) => `${300 + index}.5;${400 + index}.5`);
  const read = readText(`1000 samples a second, newtons\nlinks;rechts\nN;N\n${rows}`);
  expect(read.reading).toMatchObject({ rateHz: 1000, rateSource: "line 1: 1000 samples a second, newtons" });
  expect(read.reading?.hints).toHaveLength(1);
});

test("a stated rate outranks the header's, and the difference is a warning", () => {
  const read = readText(`Sampling rate: 1200 Hz\n${forces}`, { rateHz: 1000 });
  expect(codesOf(read)).toEqual(["rate-contradicts:warning"]);
  expect(read.reading).toMatchObject({ rateHz: 1000, rateFrom: "stated" });
});

test("a rate without a unit is not used, and the question names it", () => {
  const read = readText(`Sampling rate: 1200\n${forces}`);
  expect(codesOf(read)).toEqual(["rate-missing:refusal"]);
  expect(told(read.findings[0])?.message).toContain("1200 without a unit (line 1: Sampling rate: 1200)");
});

test("a number without a unit that contradicts the rate used is warned of, in hertz and in kilohertz", () => {
  const withHeader = (line: string): string[] => codesOf(readText(`${line}\n${names}${body}`));
  expect(withHeader("Sampling rate: 1000")).toEqual([]);
  expect(withHeader("Sampling rate: 1")).toEqual([]);
  expect(withHeader("Sampling rate: 500")).toEqual(["rate-contradicts:warning"]);
});

test("two rates in the header and no time column are asked about", () => {
  const read = readText(`Sampling rate: 1200 Hz\nFrequency: 1000 Hz\n${forces}`);
  expect(codesOf(read)).toEqual(["rate-contradicts:refusal"]);
  expect(told(read.findings[0])?.action).toBe("State which rate is right.");
  expect(read.findings[0]?.answers).toEqual([{ rateHz: 1200 }, { rateHz: 1000 }]);
});

test("a rate of the header that no force plate has is refused", () => {
  expect(codesOf(readText(`Sampling rate: 5 Hz\n${forces}`))).toContain("rate-contradicts:refusal");
});

test("a header against the time column is refused with both readings, and either answer settles it", () => {
  const text = `Sampling rate: 500 Hz\n${names}${body}`;
  const read = readText(text);
  expect(codesOf(read)).toEqual(["rate-contradicts:refusal"]);
  expect(told(read.findings[0])?.message).toContain("500 Hz (line 1: Sampling rate: 500 Hz)");
  expect(told(read.findings[0])?.message).toContain("1000 Hz");
  expect(told(read.findings[0])?.where).toBe("line 1");

  const byColumn = readText(text, { rateHz: 1000 });
  expect(codesOf(byColumn)).toEqual(["rate-contradicts:warning"]);
  expect(byColumn.recording?.rateHz).toBe(1000);

  const byHeader = readText(text, { rateHz: 500, time: "none" });
  expect(codesOf(byHeader)).toEqual(["time-left-out:warning"]);
  expect(byHeader.recording?.rateHz).toBe(500);
});

test("a header within the tolerance of the time column is silent when equal and warned of when not", () => {
  expect(readText(`Sampling rate: 1000 Hz\n${names}${body}`).findings).toEqual([]);
  // Stamps of three decimals over 49 ms cannot tell 1000 from 1005 Hz; with six decimals they can.
  const exact = lines(50, (index) => `${(index / 1000).toFixed(6)};${300 + index}.5;400.5`);
  const fine = exact.replaceAll("000;", "001;");
  const read = readText(`Sampling rate: 1005 Hz\n${names}${fine}`);
  expect(codesOf(read)).toEqual(["rate-contradicts:warning"]);
  expect(read.recording?.rateHz).toBe(1000);
});

test("a sample counter takes the header's rate", () => {
  const counted = lines(50, (index) => `${index};${300 + index}.5;400.5`);
  const read = readText(`Sampling rate: 600 Hz\nsample;left (N);right (N)\n${counted}`);
  expect(read.findings).toEqual([]);
  expect(read.reading).toMatchObject({ rateHz: 600, rateFrom: "header" });
});

test("a unit in the header counts for columns that say none, and is refused against one that says another", () => {
  const plain = lines(50, (index) => `${(index / 1000).toFixed(3)};0.3005;0.4005`);
  const read = readText(`Units: kN\ntime (s);left;right\n${plain}`);
  expect(read.findings).toEqual([]);
  expect(read.reading).toMatchObject({ forceUnit: "kN", forceUnitFrom: "header" });
  expect(read.recording?.plates[0]?.force[0]).toBe(300.5);
  expect(codesOf(readText(`Units: kN\n${names}${body}`))).toEqual([
    "unit-contradicts:refusal",
    "unit-contradicts:refusal",
  ]);
});

test("any header lines are read without an exception, and no line above the names changes a force", () => {
  const word = fc.constantFrom("Sampling rate", "Mass", "Date", "Leg", "Test", "Box", "Units", "é", "=", ":", ";", "#");
  const value = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom("1000 Hz", "70 kg", "1,000", "left", "30 cm"));
  const line = fc.tuple(word, fc.constantFrom(":", "=", ";", " "), value).map((parts) => parts.join(""));
  fc.assert(
    fc.property(fc.array(line, { maxLength: 6 }), (header) => {
      const safe = header.map((each) => each.replace(/["\n\r]/g, ""));
      const { recording } = readText(`${safe.join("\n")}\n${names}${body}`);
      return (
        recording === undefined || recording.plates.every((plate, at) => plate.force[9] === (at === 0 ? 309.5 : 409.5))
      );
    }),
    { numRuns: 500 },
  );
});
