// Tries the readers on 100,000 inputs: any bytes, any text made of what tables are made of, wounded tables, and as every
// fourth one a C3D file with damage of every kind; cuts and flips every bit of every good table; and reads 200,000 numbers.
// Nothing may throw, take longer than two seconds, or be silently wrong.
// Run: node tests/bench/fuzz-reading.ts (Node 24). `--inputs 1000 --stride 10` tries fewer, `--seed 7` others.
import fc from "fast-check";
import { parseNumberText } from "../../core/bytes/number-text.ts";
import { readTable } from "../../core/bytes/read-table.ts";
import { readC3dRecording } from "../../core/recording/c3d/read-c3d-recording.ts";
import { readRecording } from "../../core/recording/read-recording.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { anyInput, differInOneCellAtMost, isFound, leavesWhole } from "../core/bytes/damage.ts";
import { goodTables } from "../core/bytes/good-tables.ts";
import { numberText } from "../core/bytes/number-texts.ts";
import { anyC3d, complaintAboutC3d } from "../core/recording/c3d/damaged-c3d.ts";
import { told } from "../told.ts";

function option(name: string, otherwise: number): number {
  const index = process.argv.indexOf(`--${name}`);
  return index < 0 ? otherwise : Number(process.argv[index + 1]);
}

const inputs = option("inputs", 100_000);
/** Distance between the places that are cut and flipped. */
const stride = option("stride", 1);
const numbers = option("numbers", 200_000);
const seed = option("seed", 1);
const longestMilliseconds = 2000;
const c3dShare = 0.25;
const failuresShown = 20;

const failures: string[] = [];
let slowest = 0;

/** Runs one reading; an exception or two seconds are failures. */
function attempt<T>(label: string, read: () => T): T | undefined {
  const start = performance.now();
  let result: T | undefined;
  try {
    result = read();
  } catch (error) {
    failures.push(`${label}: ${String(error)}`);
  }
  const taken = performance.now() - start;
  slowest = Math.max(slowest, taken);
  if (taken > longestMilliseconds) failures.push(`${label}: ${taken.toFixed(0)} ms`);
  return result;
}

const answers = [{}, { rateHz: 1000, unit: "N", left: 1 }] as const;

/** Every reader takes any file's bytes: the table, and the recording, which asks the readers of other formats first. */
function tryReaders(label: string, bytes: Uint8Array, turn: number): "read" | "refused" {
  const read = attempt(`${label}, table`, () => readTable(bytes));
  if (read !== undefined && read.table === undefined && read.findings.length === 0) {
    failures.push(`${label}: no table, no finding`);
  }
  attempt(`${label}, recording`, () =>
    readRecording({ path: "trial.csv", bytes, sha256: "" }, answers[turn % answers.length]!, defaultSettings),
  );
  return read?.table === undefined ? "refused" : "read";
}

/** Numbers as a column of a table: every one has to be what Number() makes of its text. */
function tryNumbers(count: number): void {
  const texts = fc.sample(numberText, { numRuns: count, seed });
  const bytes = new TextEncoder().encode(`0.5,0.5\n0.5,0.5\n${texts.map((text) => `${text},0.5\n`).join("")}`);
  const { table, findings } = readTable(bytes);
  if (findings.length > 0) failures.push(`numbers: ${told(findings[0]!).message}`);
  let different = 0;
  texts.forEach((text, row) => {
    const value = table?.columns[0]?.[row + 2];
    if (Object.is(value, Number(text)) && Object.is(parseNumberText(text, "point"), Number(text))) return;
    different++;
    failures.push(`number ${text} was read as ${value}`);
  });
  console.log(`${count} numbers, ${different} of them different from Number()`);
}

tryNumbers(numbers);

/** A C3D file by its own reader, and by those of everything else. */
function tryC3d(label: string, bytes: Uint8Array, turn: number): "read" | "refused" {
  const complaint = attempt(`${label}, as C3D`, () => complaintAboutC3d(bytes));
  if (complaint !== undefined) failures.push(`${label}: ${complaint}`);
  tryReaders(label, bytes, turn);
  return readC3dRecording(bytes, {}, defaultSettings).recording === undefined ? "refused" : "read";
}

const outcomes = { refused: 0, read: 0 };
const c3dOutcomes = { refused: 0, read: 0 };
const c3dInputs = Math.round(inputs * c3dShare);
/** Inputs made at a time, so that they need not all be held. */
const inputsAtOnce = 1000;

/** Makes inputs in portions, each with a seed of its own, and tries them. */
function tryAll(
  kind: fc.Arbitrary<Uint8Array>,
  count: number,
  one: (label: string, bytes: Uint8Array, turn: number) => void,
): void {
  for (let done = 0; done < count; done += inputsAtOnce) {
    const portion = { numRuns: Math.min(inputsAtOnce, count - done), seed: seed + 7919 * done };
    fc.sample(kind, portion).forEach((bytes, index) => {
      one(`input ${index} of ${portion.numRuns} with seed ${portion.seed}`, bytes, index);
    });
  }
}

tryAll(anyInput, inputs - c3dInputs, (label, bytes, turn) => {
  outcomes[tryReaders(label, bytes, turn)]++;
});
tryAll(anyC3d, c3dInputs, (label, bytes, turn) => {
  c3dOutcomes[tryC3d(`C3D ${label}`, bytes, turn)]++;
});
console.log(
  `${inputs - c3dInputs} inputs: ${outcomes.read} read as a table, ${outcomes.refused} refused; ${c3dInputs} as C3D files: ${c3dOutcomes.read} read, ${c3dOutcomes.refused} refused; slowest ${slowest.toFixed(0)} ms`,
);

for (const good of goodTables) {
  const { name, bytes } = good;
  const whole = readTable(bytes);
  let silent = 0;
  for (let length = 0; length < bytes.length; length += stride) {
    const read = attempt(`${name} cut at ${length}`, () => readTable(bytes.subarray(0, length)));
    const isWhole = leavesWhole(good, length);
    if (!isWhole && read?.findings.length === 0) failures.push(`${name} cut at ${length}: nothing found`);
  }
  for (let place = 0; place < bytes.length; place += stride) {
    for (let bit = 0; bit < 8; bit++) {
      const damaged = bytes.slice();
      damaged[place] = damaged[place]! ^ (1 << bit);
      const label = `${name}, byte ${place}, bit ${bit}`;
      const read = attempt(label, () => readTable(damaged));
      if (read === undefined || isFound(whole, read)) continue;
      silent++;
      if (read.table === undefined || !differInOneCellAtMost(whole.table!, read.table))
        failures.push(`${label}: silently different`);
    }
  }
  console.log(
    `${name}: cut and flipped at ${Math.ceil(bytes.length / stride)} places, ${silent} of them well-formed changes of one cell or of none`,
  );
}

for (const failure of failures.slice(0, failuresShown)) console.log(`FAILED ${failure}`);
console.log(failures.length === 0 ? "no failure" : `${failures.length} failures`);
process.exitCode = failures.length === 0 ? 0 : 1;
