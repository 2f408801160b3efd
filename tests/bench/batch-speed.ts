/**
 * How many files a second are read and analysed, on one thread and on two, in one run on one machine: files of 10 s,
 * two plates, 1000 Hz, as comma-separated text with two decimals, written to the system's temporary folder first.
 * Each crew does the work twice: the first time its threads still compile the program as they go, as every run of the
 * command line does, and each thread for itself; the second time they have. The time they need to start is shown apart.
 * Then the processor's time for one file: reading (bytes to a recording) and analysis (recording to measures) apart.
 *
 *   node tests/bench/batch-speed.ts [files]     1000 files unless another number is given (Node 24)
 */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { analyzeTrial } from "../../core/session/analyze-trial.ts";
import { draftTrials } from "../../core/session/draft-trials.ts";
import { readSessionRecording } from "../../core/session/read-session-recording.ts";
import type { SessionStatements } from "../../core/session/session-input.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { noOtherTrials } from "../../core/weight/session-weighing.ts";
import { type ListedSession, listFolder, readListedFile } from "../../electron/files/read-folder.ts";
import { analyzeListed } from "../../electron/jobs/analyze-listed.ts";
import { type Crew, startCrew } from "../../electron/jobs/crew.ts";

const goalFilesPerSecond = 200;
const goalMilliseconds = 6;
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

/** Milliseconds of the processor since some earlier reading, on all threads. */
function cpuMilliseconds(since?: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
}

/** What one file costs the processor, beginning when everything is compiled. */
function printCosts({ folder: name, directory, names }: ListedSession): void {
  const session: SessionStatements = { folder: name, description: {}, descriptionFindings: [], stated: {} };
  const spent = { bytes: 0, reading: 0, analysis: 0 };
  const warmUps = Math.floor(names.length / 2);
  for (const [index, path] of names.entries()) {
    const start = process.cpuUsage();
    const listed = readListedFile(directory, path);
    if (listed.kind !== "recording") throw new Error(`${path} is no recording.`);
    const bytes = cpuMilliseconds(start);
    const read = readSessionRecording(listed.file, session, defaultSettings);
    const reading = cpuMilliseconds(start) - bytes;
    for (const draft of draftTrials(read, session, defaultSettings)) {
      analyzeTrial(draft, noOtherTrials, undefined, defaultSettings);
    }
    const analysis = cpuMilliseconds(start) - bytes - reading;
    if (index < warmUps) continue;
    spent.bytes += bytes;
    spent.reading += reading;
    spent.analysis += analysis;
  }
  const perFile = (milliseconds: number): string => (milliseconds / (names.length - warmUps)).toFixed(2);
  const all = spent.bytes + spent.reading + spent.analysis;
  console.log(
    `CPU time a file: ${perFile(all)} ms (goal ${goalMilliseconds}): from disk and hashed ${perFile(spent.bytes)}, reading ${perFile(spent.reading)}, analysis ${perFile(spent.analysis)}`,
  );
}

/** Waits until everybody has answered once: then the threads are there and have loaded the program. */
async function ready(crew: Crew, { directory, folder: name }: ListedSession): Promise<void> {
  const statements = { folder: name, description: {}, descriptionFindings: [], stated: {} };
  const session = { directory, statements, settings: defaultSettings };
  await Promise.all(crew.members.map((member) => member.ask({ kind: "open", session })));
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
  const speeds: number[][] = [[], []];
  for (const jobs of [1, 2]) {
    const asked = performance.now();
    const crew = startCrew(jobs);
    await ready(crew, listed);
    const startSeconds = (performance.now() - asked) / 1000;
    for (const [round, name] of ["at first", "again"].entries()) {
      const before = process.cpuUsage();
      const started = performance.now();
      const result = await analyzeListed(listed, { stated: {} }, defaultSettings, crew);
      const taken = (performance.now() - started) / 1000;
      const cpu = cpuMilliseconds(before);
      const analysed = result.trials.filter(({ status }) => status === "analysed").length;
      speeds[round]?.push(files / taken);
      console.log(
        `${jobs} ${jobs === 1 ? "thread " : "threads"} ${name}: ${taken.toFixed(2)} s, ${(files / taken).toFixed(0)} files a second, ${(cpu / files).toFixed(2)} ms of CPU a file (started in ${startSeconds.toFixed(2)} s), ${analysed} of ${result.trials.length} trials analysed, ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB in use`,
      );
    }
    await crew.close();
  }
  const [first = Number.NaN, again = Number.NaN] = speeds.map(([one = Number.NaN, two = Number.NaN]) => two / one);
  console.log(`Two threads are ${first.toFixed(2)} times as fast as one at first, ${again.toFixed(2)} times again.`);
  printCosts(listed);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
