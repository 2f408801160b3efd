import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { FoundSession } from "../../../electron/files/read-folder.ts";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { type OpenOptions, openRegister } from "../../../electron/register/open-register.ts";
import type { Register } from "../../../electron/register/register.ts";
import type { Circumstances } from "../../../electron/register/register-writes.ts";

/** Words that stand nowhere else, so that finding them in a file means they leaked. */
export const secrets = {
  name: "Sunniva Tjeldvoll",
  code: "QX-4711",
  note: "ondt i kneet etter hoppene",
  otherName: "Birk Hovland",
  folder: "spring/week-17",
} as const;

/** A folder that goes away with the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-register-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that moves a minute with each look at it. */
export function testCircumstances(start = "2026-11-02T08:00:00Z"): Circumstances {
  let milliseconds = Date.parse(start);
  return {
    who: "tester",
    now: () => {
      milliseconds += 60_000;
      return new Date(milliseconds);
    },
  };
}

/** An open register in a folder of its own; closed and removed with the test. */
export async function testRegister(options: OpenOptions & { readonly file?: string } = {}): Promise<Register> {
  const file = options.file ?? join(temporaryFolder(), "register.sqlite");
  const register = await openRegister(file, { create: true, circumstances: testCircumstances(), ...options });
  onTestFinished(() => closeQuietly(register));
  return register;
}

/** Some tests close a register themselves. */
function closeQuietly(register: Register): void {
  try {
    register.close();
  } catch (error) {
    if (!(error instanceof Error) || !error.message.includes("not open")) throw error;
  }
}

/** Bytes of a recording that no compression makes much of, so that a search for them can find them. */
export function recordingBytes(seed: number, rows = 40): Uint8Array {
  let state = seed * 2_654_435_761 + 1;
  const lines = Array.from({ length: rows }, (_, row) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return `${(row / 1000).toFixed(3)},${(600 + (state % 100_000) / 1000).toFixed(3)}`;
  });
  return Buffer.from(`time (s),force (N)\n${lines.join("\n")}\n`);
}

/** One session of an athlete as a folder would give it. */
export function foundSession(
  athlete: { code: string; name?: string },
  seed: number,
  folder = `${secrets.folder}-${seed}`,
) {
  const files = [1, 2, 3].map((number) => recordingFile(`jump-${number}.csv`, recordingBytes(seed * 10 + number)));
  const day = String((seed % 27) + 1).padStart(2, "0");
  return {
    folder,
    files,
    unreadable: [],
    descriptionFindings: [],
    description: {
      athlete,
      involved: "left",
      date: `2026-10-${day}`,
      milestone: "month 6",
      massKg: 70 + seed / 10,
      pain: 1,
      effusion: "trace",
      note: secrets.note,
      files: [
        { file: "jump-1.csv", test: "countermovementJump", limb: "both" },
        { file: "jump-2.csv", trial: 1, excluded: { reason: "arm swing" } },
        { file: "jump-2.csv", test: "countermovementJump", limb: "left", seen: true },
        { file: "missing.csv", test: "dropJump" },
      ],
    },
  } as const satisfies FoundSession;
}

/** A register with two athletes, three sessions and nine recordings. */
export async function filledRegister(options: OpenOptions & { readonly file?: string } = {}): Promise<Register> {
  const register = await testRegister(options);
  importSession(register, foundSession({ code: secrets.code, name: secrets.name }, 1));
  importSession(register, foundSession({ code: secrets.code, name: secrets.name }, 2));
  importSession(register, foundSession({ code: "ZR-0815", name: secrets.otherName }, 3));
  return register;
}

/** The identifier of the athlete of a code. */
export function athleteId(register: Register, code: string): string {
  const line = register.reads.athletes().find((each) => each.code === code);
  if (line === undefined) throw new Error(`There is no athlete ${code}.`);
  return line.id;
}

/** Every file in and below a folder with its bytes. */
export function filesBelow(folder: string): readonly { readonly path: string; readonly bytes: Buffer }[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .map((path) => ({ path, bytes: readFileSync(path) }));
}

/** The files in and below a folder that hold these bytes. */
export function filesHolding(folder: string, bytes: Uint8Array | string): readonly string[] {
  return filesBelow(folder)
    .filter((each) => each.bytes.includes(typeof bytes === "string" ? bytes : Buffer.from(bytes)))
    .map(({ path }) => path);
}
