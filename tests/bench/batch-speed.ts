/**
 * How many files a second are read and analysed, on one thread and on two, in one run on one machine: files of 10 s,
 * two plates, 1000 Hz, as comma-separated text with two decimals, written to the system's temporary folder first.
 *
 *   node tests/bench/batch-speed.ts [files]     1000 files unless another number is given (Node 24)
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { defaultSettings } from "../../core/settings.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { analyzeListed } from "../../electron/jobs/analyze-listed.ts";
import { startCrew } from "../../electron/jobs/crew.ts";
import { listFolder } from "../../electron/read-folder.ts";

const goalFilesPerSecond = 200;
const rateHz = 1000;
const seconds = 10;
/** Different jumps; the rest are copies that differ in a digit of the header, so that each counts as a recording. */
const jumps = 20;

const files = Number(process.argv[2] ?? 1000);
const folder = mkdtempSync(join(tmpdir(), "counterpoise-batch-"));

function jumpText(seed: number): string {
  const jump = simulateCountermovementJump({
    seed,
    rateHz,
    massKg: 60 + seed,
    limb: "both",
    plates: "two",
    jumpHeightMetres: 0.25,
    swayMetres: 0.0005,
    plateNoiseNewtons: 1.5,
  });
  const [left, right] = jump.plates;
  if (left === undefined || right === undefined) throw new Error("Two plates were asked for.");
  // Standing still goes on until ten seconds are full.
  const rows = Array.from({ length: rateHz * seconds }, (_, index) => {
    const at = index < jump.sampleCount ? index : jump.sampleCount - 1 - ((index - jump.sampleCount) % 500);
    return `${(index / rateHz).toFixed(3)},${(left.force[at] ?? 0).toFixed(2)},${(right.force[at] ?? 0).toFixed(2)}`;
  });
  return `time (s),left (N),right (N)\n${rows.join("\n")}\n`;
}

try {
  const session = join(folder, "session");
  mkdirSync(session);
  const texts = Array.from({ length: jumps }, (_, index) => jumpText(2 * index + 1));
  for (let index = 0; index < files; index += 1) {
    const name = `countermovement-both-${String(index + 1).padStart(5, "0")}.csv`;
    writeFileSync(join(session, name), `Recording: ${index + 1}\n${texts[index % jumps]}`);
  }
  const [listed] = listFolder(folder);
  if (listed === undefined) throw new Error("The files are not there.");
  console.log(`${files} files of ${seconds} s, two plates, ${rateHz} Hz; goal ${goalFilesPerSecond} files a second.`);
  const speeds: number[] = [];
  for (const jobs of [1, 2]) {
    const crew = startCrew(jobs);
    const started = performance.now();
    const result = await analyzeListed(listed, { stated: {} }, defaultSettings, crew);
    const taken = (performance.now() - started) / 1000;
    await crew.close();
    const analysed = result.trials.filter(({ status }) => status === "analysed").length;
    speeds.push(files / taken);
    console.log(
      `${jobs} ${jobs === 1 ? "thread " : "threads"}: ${taken.toFixed(2)} s, ${(files / taken).toFixed(0)} files a second, ${analysed} of ${result.trials.length} trials analysed, ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB in use`,
    );
  }
  const [one = Number.NaN, two = Number.NaN] = speeds;
  console.log(`Two threads are ${(two / one).toFixed(2)} times as fast as one.`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
