import { chmodSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { describedSession, temporaryFolder } from "../simulated-recordings.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { runInProcess } from "./run-in-process.ts";

let folder: ReturnType<typeof temporaryFolder>;
let maskBefore: number;
const at = (name: string) => join(folder.path, name);
const modeOf = (name: string) => statSync(at(name)).mode & 0o777;

beforeAll(async () => {
  folder = temporaryFolder();
  folder.write(describedSession(), "month-7");
  // What most systems give a person: files that everybody may read.
  maskBefore = process.umask(0o022);
  writeFileSync(at("open-to-all"), "");
  expect(modeOf("open-to-all")).toBe(0o644);
  writeFileSync(at("passphrase"), strongPassphrase, { mode: 0o600 });
  expect((await runInProcess("register", "import", at("month-7"), "--register", at("clinic.sqlite"))).code).toBe(0);
});
afterAll(() => {
  process.umask(maskBefore);
  folder.remove();
});

const sealed = () => ["--file-passphrase-file", at("passphrase")];
test.skipIf(process.platform === "win32").each([
  ["results.json", () => ["analyze", at("month-7"), "--format", "json"]],
  ["table.txt", () => ["analyze", at("month-7")]],
  ["sheet.html", () => ["sheet", at("month-7")]],
  ["sheet.pdf", () => ["sheet", at("month-7")]],
  ["all.zip", () => ["register", "export", "--register", at("clinic.sqlite")]],
  ["all.sealed", () => ["register", "export", "--register", at("clinic.sqlite"), ...sealed()]],
  ["copy.sqlite", () => ["register", "backup", "--register", at("clinic.sqlite")]],
  ["copy.sealed", () => ["register", "backup", "--register", at("clinic.sqlite"), ...sealed()]],
])("%s is readable by its owner alone, whatever the mask of this user is", async (name, typed) => {
  for (const mask of [0o022, 0]) {
    process.umask(mask);
    const out = `${mask}-${name}`;
    const ran = await runInProcess(...typed(), "--out", at(out));
    expect([ran.code, ran.err.includes("mistake")]).toEqual([0, false]);
    expect(modeOf(out)).toBe(0o600);
  }
});

test.skipIf(process.platform === "win32")("a result written over keeps the rights its owner gave it", async () => {
  const out = at("shared.csv");
  expect((await runInProcess("analyze", at("month-7"), "--format", "csv", "--out", out)).code).toBe(0);
  chmodSync(out, 0o640);
  expect((await runInProcess("analyze", at("month-7"), "--format", "csv", "--out", out)).code).toBe(0);
  expect(modeOf("shared.csv")).toBe(0o640);
});
