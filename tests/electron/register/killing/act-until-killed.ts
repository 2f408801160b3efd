import { writeSync } from "node:fs";
import { recordingFile } from "../../../../electron/files/stored-session.ts";
import { backUpTo, makeDailyBackup } from "../../../../electron/register/backups.ts";
import { eraseForGood } from "../../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../../electron/register/import-sessions.ts";
import { openRegister } from "../../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../../electron/register/register.ts";
import { keptBackups } from "../../../../electron/register/register-folder.ts";
import { removePassphrase, setPassphrase } from "../../../../electron/register/register-passphrase.ts";
import { restoreBackup } from "../../../../electron/register/restore-backup.ts";
import { tellSteps } from "../../../../electron/register/steps.ts";
import { type Line, type Orders, placesIn, words } from "./operations.ts";
import { seededDraw } from "./seeded-draw.ts";

/**
 * A program that does one operation on a register. It writes a line for whatever it was told is done, and falls where
 * its parameters say: at the step of a number, by its own hand or staying there until it is killed.
 */
const { folder, work, passphrase, seed, lastStep, byOwnHand } = JSON.parse(process.argv[2] ?? "") as Orders;
const { register: file, elsewhere } = placesIn(folder);
const draw = seededDraw(seed);
let passed = 0;

/** Written at once: what has been said has left this process before it can be killed. */
function say(line: Line): void {
  writeSync(1, `${JSON.stringify(line)}\n`);
}

function listen(): void {
  tellSteps((step) => {
    passed += 1;
    if (passed !== lastStep) return;
    say({ what: "step", step });
    if (byOwnHand) process.kill(process.pid, "SIGKILL");
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
  });
}

function open(): Promise<Register> {
  return openRegister(file, {
    waitMilliseconds: 10_000,
    ...(passphrase !== undefined && { passphrase: passphraseBytes(passphrase) }),
  });
}

function importAnother(register: Register): void {
  const files = Array.from({ length: 1 + draw(3) }, (_, index) => {
    const rows = Array.from({ length: 60 }, (__, row) => `${row / 1000},${500 + draw(400_000) / 1000}`);
    return recordingFile(`jump-${index}.csv`, Buffer.from(`time (s),force (N)\n${rows.join("\n")}\n`));
  });
  const description = { athlete: { code: `K-${draw(1_000_000)}` }, date: "2026-10-05", files: [] };
  const found = { folder: `k-${draw(1e9)}`, files, unreadable: [], descriptionFindings: [], description };
  const { session } = importSession(register, found);
  say({ what: "imported", session, sums: files.map(({ sha256 }) => sha256) });
}

function changeNote(register: Register, note: number): void {
  const { id } = register.reads.athletes().find(({ code }) => code === "QX-4711")!;
  const { content } = register.reads.record("athletes", id)!;
  register.writes.act("athlete changed", (set) => set.change("athletes", id, { ...content, note: String(note) }));
  say({ what: "noted", note });
}

async function copyElsewhere(register: Register, under: string | undefined): Promise<void> {
  const path = `${elsewhere}/copy-${draw(1e9)}.sqlite`;
  await backUpTo(register, path, under === undefined ? undefined : passphraseBytes(under));
  say({ what: "copied", path });
}

async function doIt(register: Register): Promise<void> {
  switch (work) {
    case "import":
      for (let count = 0; count < 3; count += 1) importAnother(register);
      break;
    case "edit":
      for (let note = 1; note <= 8; note += 1) changeNote(register, note);
      break;
    case "erase": {
      const binned = register.reads.bin().find(({ kind }) => kind === "athletes")!;
      eraseForGood(register, [binned]);
      break;
    }
    case "set passphrase":
      setPassphrase(register, passphraseBytes(words.second));
      break;
    case "remove passphrase":
      removePassphrase(register);
      break;
    case "restore kept":
      await restoreBackup(register, keptBackups(file)[0]!, {});
      break;
    case "restore plain":
      await restoreBackup(register, `${elsewhere}/plain.sqlite`, {});
      break;
    case "restore sealed":
      await restoreBackup(register, `${elsewhere}/sealed.sqlite`, { file: passphraseBytes(words.sealed) });
      break;
    case "restore other":
      await restoreBackup(register, `${elsewhere}/other.sqlite`, { register: passphraseBytes(words.other) });
      break;
    case "open":
      break;
    case "back up daily":
      say({ what: "copied", path: await makeDailyBackup(register) });
      break;
    case "back up elsewhere":
      await copyElsewhere(register, undefined);
      break;
    case "back up sealed":
      await copyElsewhere(register, words.sealed);
      break;
  }
}

if (work === "open") {
  say({ what: "at work" });
  listen();
  await open();
} else {
  const register = await open();
  say({ what: "at work" });
  listen();
  await doIt(register);
}
say({ what: "done", steps: passed });
// It holds the register until it is killed: closing would tidy up what a stop leaves.
tellSteps(undefined);
setInterval(() => undefined, 60_000);
