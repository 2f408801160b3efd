import { execFileSync, spawn } from "node:child_process";
import { chmodSync, chownSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readPassphraseFile } from "../../../electron/command/passphrase-file.ts";
import { recordingBytes, temporaryFolder } from "../register/register-world.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { runInProcess } from "./run-in-process.ts";

async function imported() {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "recordings"));
  writeFileSync(join(folder, "recordings", "jump.csv"), recordingBytes(1));
  const file = join(folder, "register.sqlite");
  const register = (command: string, ...rest: readonly string[]) =>
    runInProcess("register", command, "--register", file, ...rest);
  await register("import", join(folder, "recordings"));
  return { folder, register };
}

function written(folder: string, name: string, text: string, mode = 0o600): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  chmodSync(path, mode);
  return path;
}

test.skipIf(process.platform === "win32")(
  "a passphrase file that others can read or change is refused, with what to do",
  async () => {
    const { folder, register } = await imported();
    for (const mode of [0o644, 0o640, 0o604, 0o620, 0o602, 0o660, 0o601]) {
      const word = written(folder, `word-${mode}`, `${strongPassphrase}\n`, mode);
      const refused = await register("protect", "--new-passphrase-file", word);
      expect([mode, refused.code]).toEqual([mode, 2]);
      expect(refused.err).toContain("chmod 600");
      expect(refused.err).toContain(word);
    }
    expect((await register("list")).code).toBe(0);
    for (const mode of [0o600, 0o400, 0o700]) {
      const read = readPassphraseFile(written(folder, `own-${mode}`, "a word\r\nmore", mode));
      expect(Buffer.from(read).toString()).toBe("a word");
    }
  },
);

test.runIf(process.getuid?.() === 0)("a file of another user is refused", async () => {
  const folder = temporaryFolder();
  const word = written(folder, "word", strongPassphrase);
  chownSync(word, 65_534, 65_534);
  expect(() => readPassphraseFile(word)).toThrow("belongs to another user");
});

test.skipIf(process.platform === "win32")("pipes, and what never ends, are read to the end of their line", async () => {
  const folder = temporaryFolder();
  const pipe = join(folder, "pipe");
  execFileSync("mkfifo", ["-m", "644", pipe]);
  const writer = spawn("sh", ["-c", `printf '%s\\n' "$1" > "$0"`, pipe, strongPassphrase]);
  expect(Buffer.from(readPassphraseFile(pipe)).toString()).toBe(strongPassphrase);
  await new Promise((resolve) => writer.once("exit", resolve));
  expect(() => readPassphraseFile("/dev/zero")).toThrow("longer than 4000 bytes");
  expect(() => readPassphraseFile("/dev/null")).toThrow("is empty");
  expect(() => readPassphraseFile(folder)).toThrow("cannot be read");
  expect(() => readPassphraseFile(join(folder, "none"))).toThrow("cannot be read");
});

test("a weak new passphrase is refused by protect, export and backup; nothing is written", async () => {
  const { folder, register } = await imported();
  const out = join(folder, "out");
  for (const [name, text] of [
    ["figures", "12345678\n"],
    ["blanks", "        \n"],
  ] as const) {
    const word = written(folder, name, text);
    for (const [command, ...options] of [
      ["protect", "--new-passphrase-file", word],
      ["export", "--out", out, "--file-passphrase-file", word],
      ["backup", "--out", out, "--file-passphrase-file", word],
    ] as const) {
      const { code, out: result, err } = await register(command, ...options);
      expect([command, code, result]).toEqual([command, 2, ""]);
      expect(err).toMatch(/guessed too soon: .*Nothing was changed or written\.\n$/);
    }
  }
  expect(existsSync(out)).toBe(false);
  expect((await register("list")).code).toBe(0);
});
