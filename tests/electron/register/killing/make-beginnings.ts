import { copyFileSync, cpSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { backUpTo, makeDailyBackup } from "../../../../electron/register/backups.ts";
import { importSession } from "../../../../electron/register/import-sessions.ts";
import { openRegister } from "../../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../../electron/register/register.ts";
import { backupFolder } from "../../../../electron/register/register-folder.ts";
import { setPassphrase } from "../../../../electron/register/register-passphrase.ts";
import { makeOldRegister } from "../old-register.ts";
import { athleteId, foundSession, secrets, testCircumstances } from "../register-world.ts";
import { type Beginning, beginnings, type Places, placesIn, words } from "./operations.ts";

const earlier = fileURLToPath(new URL("../earlier/", import.meta.url));
/** So many that a conversion takes more than one transaction. */
const sessions = 7;
const furtherSessions = 110;

/** Whoever is to be erased; the words stand nowhere else. */
export const toErase = { code: "ER-2209", name: "Gaute Solvang" } as const;

/** Makes the folder of every beginning once; rounds work on copies of them. */
export async function makeBeginnings(folder: string): Promise<ReadonlyMap<Beginning, string>> {
  const made = new Map(beginnings.map((name) => [name, join(folder, name.replaceAll(" ", "-"))]));
  for (const place of made.values()) {
    const { register, elsewhere } = placesIn(place);
    mkdirSync(dirname(register), { recursive: true });
    mkdirSync(elsewhere);
  }
  const at = (name: Beginning) => placesIn(made.get(name)!);
  await makePlain(at("plain"));
  cpSync(made.get("plain")!, made.get("protected")!, { recursive: true });
  await protect(at("protected"));
  for (const schema of [1, 2, 3]) {
    makeOld(at(`schema ${schema}` as Beginning), schema, undefined);
    if (schema < 3) makeOld(at(`schema ${schema} under a passphrase` as Beginning), schema, words.first);
  }
  copyEarlier(at("schema 3 under a passphrase"));
  return made;
}

async function makePlain({ register: file, elsewhere }: Places): Promise<void> {
  const register = await openRegister(file, { create: true, circumstances: testCircumstances() });
  await makeDailyBackup(register);
  importSession(register, foundSession({ code: "ZR-0815", name: secrets.otherName }, 1));
  importSession(register, foundSession(toErase, 2));
  for (let seed = 3; seed <= sessions; seed += 1) {
    importSession(register, foundSession({ code: secrets.code, name: secrets.name }, seed));
  }
  await makeDailyBackup(register);
  await backUpTo(register, join(elsewhere, "plain.sqlite"), undefined);
  await backUpTo(register, join(elsewhere, "sealed.sqlite"), passphraseBytes(words.sealed));
  await makeOther(register, join(elsewhere, "other.sqlite"));
  register.writes.moveToBin({ kind: "athletes", id: athleteId(register, toErase.code) });
  register.close();
}

/** A copy of the same register under a passphrase of its own. */
async function makeOther(register: Register, path: string): Promise<void> {
  const own = join(dirname(path), "passing-other.sqlite");
  await backUpTo(register, own, undefined);
  const other = await openRegister(own, { circumstances: testCircumstances() });
  setPassphrase(other, passphraseBytes(words.other));
  other.close();
  copyFileSync(own, path);
}

async function protect({ register: file }: Places): Promise<void> {
  const register = await openRegister(file, { circumstances: testCircumstances("2026-11-03T08:00:00Z") });
  setPassphrase(register, passphraseBytes(words.first));
  register.close();
}

function makeOld({ register: file }: Places, schema: number, passphrase: string | undefined): void {
  makeOldRegister(file, schema, {
    furtherSessions,
    ...(passphrase !== undefined && { passphrase: passphraseBytes(passphrase) }),
  });
  keepAsBackup(file, file);
}

/** What the program of schema 3 wrote itself. */
function copyEarlier({ register: file }: Places): void {
  copyFileSync(join(earlier, "schema-3-passphrase.sqlite"), file);
  keepAsBackup(join(earlier, "schema-3-passphrase-backup.sqlite"), file);
}

function keepAsBackup(source: string, file: string): void {
  mkdirSync(backupFolder(file), { recursive: true });
  copyFileSync(source, join(backupFolder(file), "daily-2026-10-12T08-07-00.sqlite"));
}
