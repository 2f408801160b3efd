import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openRegister } from "../../../electron/register/open-register.ts";
import { makeOldRegister, oldIds } from "./old-register.ts";

/** What the program under test was told is done. */
export type Acknowledgement =
  | { readonly what: "started" }
  | { readonly what: "opened" }
  | { readonly what: "noted"; readonly athlete: string; readonly note: number }
  | { readonly what: "imported"; readonly session: string; readonly sums: readonly string[] }
  | { readonly what: "backed up"; readonly path: string }
  | { readonly what: "erased"; readonly athlete: string };

/** What many kills came to. */
export interface KillReport {
  readonly rounds: number;
  readonly acknowledged: Readonly<Record<Acknowledgement["what"], number>>;
  /** Rounds in which the program was killed before it had opened the register: making or migrating it. */
  readonly killedWhileOpening: number;
  readonly migrated: number;
  /** One sentence for everything that was not as it must be. */
  readonly faults: readonly string[];
}

const program = fileURLToPath(new URL("act-until-killed.ts", import.meta.url));
/** Every so many rounds the register begins anew, as one of an older schema with data in it. */
const roundsPerRegister = 5;
const keptBackups = 10;
/** Opening, migrating and the day's first backup take about this long; the work goes on for ever. */
const mostMillisecondsOpening = 250;
const mostMillisecondsAtWork = 1200;

/**
 * Kills a program that works on a register, again and again at another moment, and looks each time whether the
 * register opens, is sound, and holds everything that was acknowledged.
 */
export async function killRounds(rounds: number, say: (line: string) => void = () => undefined): Promise<KillReport> {
  const faults: string[] = [];
  const acknowledged = { started: 0, opened: 0, noted: 0, imported: 0, "backed up": 0, erased: 0 };
  let killedWhileOpening = 0;
  let migrated = 0;
  let folder = "";
  let told: Acknowledgement[] = [];
  for (let round = 0; round < rounds; round += 1) {
    if (round % roundsPerRegister === 0) {
      if (folder !== "") rmSync(folder, { recursive: true, force: true });
      folder = mkdtempSync(join(tmpdir(), "counterpoise-kill-"));
      makeOldRegister(join(folder, "register.sqlite"), 1);
      told = [];
      migrated += 1;
    }
    const file = join(folder, "register.sqlite");
    // Early rounds of a register aim at its opening (the migration, the first backup), later ones at its work.
    const aim = round % roundsPerRegister < 2 ? "opening" : "work";
    const lines = await runAndKill(file, round, aim);
    if (!lines.some(({ what }) => what === "opened")) killedWhileOpening += 1;
    for (const each of lines) acknowledged[each.what] += 1;
    told.push(...lines);
    for (const fault of await lookAfterwards(file, told)) faults.push(`Round ${round}: ${fault}`);
    if ((round + 1) % 20 === 0) say(`${round + 1} rounds, ${faults.length} faults`);
  }
  rmSync(folder, { recursive: true, force: true });
  return { rounds, acknowledged, killedWhileOpening, migrated, faults };
}

/** Lets the program run for a random while and kills it without warning. */
function runAndKill(file: string, round: number, aim: "opening" | "work"): Promise<readonly Acknowledgement[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, file, String(round * 7919 + 1)], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    let text = "";
    let trouble = "";
    let isDoomed = false;
    const killWithin = (milliseconds: number) => {
      if (!isDoomed) setTimeout(() => child.kill("SIGKILL"), Math.random() * milliseconds);
      isDoomed = true;
    };
    child.stdout.on("data", (data: Buffer) => {
      text += data.toString();
      if (aim === "opening") killWithin(mostMillisecondsOpening);
      else if (text.includes('"opened"')) killWithin(mostMillisecondsAtWork);
    });
    child.stderr.on("data", (data: Buffer) => {
      trouble += data.toString();
    });
    child.on("error", reject);
    child.on("close", (_code, signal) => {
      if (signal !== "SIGKILL") return reject(new Error(`The program under test ended by itself: ${trouble}`));
      const whole = text
        .slice(0, text.lastIndexOf("\n") + 1)
        .split("\n")
        .slice(0, -1);
      return resolve(whole.map((line) => JSON.parse(line) as Acknowledgement));
    });
  });
}

/** What is not as it must be after a kill. */
async function lookAfterwards(file: string, told: readonly Acknowledgement[]): Promise<readonly string[]> {
  const faults: string[] = [];
  const register = await openRegister(file);
  try {
    if (register.readOnlyBecause !== undefined) faults.push(register.readOnlyBecause);
    faults.push(...register.verify().problems);
    const old = register.reads.athletes().find(({ id }) => id === oldIds.athlete);
    if (old?.sessions !== 1) faults.push("What the older register held is missing.");
    const backups = told.filter((each) => each.what === "backed up").slice(-keptBackups + 1);
    for (const each of told) {
      if (each.what === "noted") {
        const note = Number(register.reads.record("athletes", each.athlete)?.content.note);
        if (!(note >= each.note)) faults.push(`Note ${each.note} was acknowledged, and ${note} is there.`);
      } else if (each.what === "imported") {
        const files = register.reads.sessionInput(each.session)?.files ?? [];
        if (files.map(({ sha256 }) => sha256).join() !== each.sums.join())
          faults.push("An acknowledged import is missing.");
      } else if (each.what === "erased") {
        if (register.reads.record("athletes", each.athlete) !== undefined)
          faults.push("An erased athlete is there again.");
      }
    }
    for (const { path } of backups) if (!existsSync(path)) faults.push("An acknowledged backup is missing.");
    const newest = backups.at(-1);
    if (newest !== undefined && existsSync(newest.path)) {
      const backup = await openRegister(newest.path);
      faults.push(...backup.verify().problems.map((problem) => `In the newest backup: ${problem}`));
      backup.close();
    }
  } finally {
    register.close();
  }
  return faults;
}
