// A register of 2,000 athletes, 20,000 sessions and 200,000 recordings of 2 KB with a trial each: how long opening,
// listing, searching and an athlete's page take, and how much memory; once plain and once under a passphrase.
// Run: node tests/bench/register-scale.ts [share of the full size, 1] (Node 24).
import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openRegister } from "../../electron/register/open-register.ts";
import { deriveKey, newDerivation, passphraseBytes } from "../../electron/register/passphrase-key.ts";
import { setPassphrase } from "../../electron/register/register-passphrase.ts";

const sessionsPerAthlete = 10;
const trialsPerSession = 10;
const recordingBytes = 2048;
const looks = 25;

/** One measured figure in milliseconds: the worst of several looks, since the worst is what a person notices. */
function worst(work: (look: number) => unknown): number {
  let slowest = 0;
  for (let look = 0; look < looks; look += 1) {
    const start = performance.now();
    work(look);
    slowest = Math.max(slowest, performance.now() - start);
  }
  return slowest;
}

async function fill(file: string, athletes: number): Promise<void> {
  const register = await openRegister(file, { create: true });
  for (let athlete = 0; athlete < athletes; athlete += 1) {
    register.writes.act("recordings imported", (changes) => {
      const code = `S-${String(athlete).padStart(4, "0")}`;
      const id = changes.add(
        "athletes",
        {},
        { code, name: `Simulated Person ${athlete}`, birthYear: 1990 + (athlete % 20) },
      );
      changes.add(
        "injuries",
        { athlete: id },
        { side: athlete % 2 ? "left" : "right", structure: "knee", date: "2025-02-03" },
      );
      for (let number = 0; number < sessionsPerAthlete; number += 1) {
        const date = `2026-${String(number + 1).padStart(2, "0")}-11`;
        const content = { folder: `${code}/${number}`, date, milestone: `month ${number}`, massKg: 70 };
        const session = changes.add("sessions", { athlete: id }, content);
        for (let trial = 1; trial <= trialsPerSession; trial += 1) {
          const stated = { test: "countermovementJump", limb: "both" } as const;
          const said = { stated, position: trial - 1 };
          const recording = changes.addRecording(session, `jump-${trial}.csv`, randomBytes(recordingBytes), said);
          changes.add(
            "trials",
            { recording },
            { number: 1, stated: { seen: true }, position: trial + 99, seenBy: "tester" },
          );
        }
      }
    });
    if ((athlete + 1) % 500 === 0) console.log(`${athlete + 1} athletes written`);
  }
  register.close();
}

/** The passphrase's key alone: dear by design, so it is counted apart. */
function keyCost(passphrase: Uint8Array): string {
  const start = performance.now();
  const before = process.cpuUsage();
  deriveKey(passphrase, newDerivation());
  const { user, system } = process.cpuUsage(before);
  return `${(performance.now() - start).toFixed(0)} ms (${((user + system) / 1000).toFixed(0)} ms of processor time)`;
}

async function measure(file: string, passphrase: Uint8Array | undefined): Promise<void> {
  const key = passphrase === undefined ? undefined : keyCost(passphrase);
  const start = performance.now();
  const before = process.cpuUsage();
  const register = await openRegister(file, passphrase === undefined ? {} : { passphrase });
  const opening = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  const lines = register.reads.athletes();
  const list = worst(() => register.reads.athletes());
  const search = worst((look) => register.reads.athletes({ text: `person ${look * 71}` }));
  const page = worst((look) => register.reads.athletePage(lines[(look * 997) % lines.length]!.id));
  const peakMegabytes = process.resourceUsage().maxRSS / 1024;
  const processor = ((user + system) / 1000).toFixed(0);
  console.log(
    `opening ${opening.toFixed(0)} ms (${processor} ms of processor time)${key === undefined ? "" : `, the passphrase's key included, which alone takes ${key}`}`,
  );
  console.log(
    `list of ${lines.length} ${list.toFixed(1)} ms, search ${search.toFixed(1)} ms, an athlete's page ${page.toFixed(1)} ms (worst of ${looks})`,
  );
  console.log(`memory at most ${peakMegabytes.toFixed(0)} MB`);
  register.close();
}

/** In a program of its own, so that the memory of making the register does not count. */
function measureApart(file: string, word?: string): void {
  const parameters = [fileURLToPath(import.meta.url), "--measure", file, ...(word === undefined ? [] : [word])];
  spawnSync(process.execPath, parameters, { stdio: "inherit" });
}

const words = "nine grey geese";
const [first = "1"] = process.argv.slice(2);
if (first === "--measure")
  await measure(process.argv[3]!, process.argv[4] === undefined ? undefined : passphraseBytes(process.argv[4]));
else {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-scale-"));
  try {
    const file = join(folder, "register.sqlite");
    const start = performance.now();
    await fill(file, Math.round(2000 * Number(first)));
    const took = () => ((performance.now() - start) / 1000).toFixed(0);
    console.log(`made in ${took()} s, ${(statSync(file).size / 1e6).toFixed(0)} MB`);
    measureApart(file);
    const register = await openRegister(file);
    setPassphrase(register, passphraseBytes(words));
    register.close();
    console.log(`under a passphrase after ${took()} s, ${(statSync(file).size / 1e6).toFixed(0)} MB`);
    measureApart(file, words);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
