import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { recordingBytes, temporaryFolder } from "../register/register-world.ts";
import { runInProcess } from "./run-in-process.ts";

/** A register with one athlete, a backup beside it and one elsewhere. */
async function copied() {
  const folder = temporaryFolder();
  const recordings = join(folder, "recordings");
  mkdirSync(recordings);
  writeFileSync(join(recordings, "jump-1.csv"), recordingBytes(1));
  const session = { athlete: { code: "GH-99", name: "Simulated Person" }, date: "2026-10-13", involved: "left" };
  writeFileSync(join(recordings, "session.json"), JSON.stringify(session));
  const file = join(folder, "register.sqlite");
  const register = (command: string, ...rest: readonly string[]) =>
    runInProcess("register", command, "--register", file, ...rest);
  await register("import", recordings);
  const place = join(folder, "elsewhere.sqlite");
  await register("backup", "--out", place);
  const [name = ""] = readdirSync(`${file}-backups`);
  return { folder, register, place, kept: join(`${file}-backups`, name) };
}

test("copies lists every copy with what is known of it, as lines and as JSON", async () => {
  const { register, place, kept } = await copied();
  const { code, out, err } = await register("copies");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const time = String.raw`\d{4}-\d\d-\d\d \d\d:\d\d UTC`;
  const line = (path: string, kind: string) =>
    `${path}\t${kind}\tmade ${time}\t\\d+ bytes\tno passphrase\tchecked ${time}: the file's structure, sound\tthere\n`;
  expect(out).toMatch(new RegExp(`^${line(kept, "kept daily")}${line(place, "backup elsewhere")}$`));
  const document = JSON.parse((await register("copies", "--format", "json")).out);
  expect(document).toMatchObject({
    copies: [
      { path: kept, kind: "kept daily", protection: "none", state: "there", stale: [] },
      { path: place, kind: "backup elsewhere", protection: "none", state: "there", stale: [] },
    ],
    notTold: [],
    notChecked: [],
  });
});

test("copies --verify checks each, keeps when, and ends with 1 where one is damaged", async () => {
  const { register, place, kept } = await copied();
  const sound = await register("copies", "--verify");
  expect(sound).toMatchObject({ code: 0, err: "" });
  expect(sound.out.match(/: everything, sound/g)).toHaveLength(2);
  expect((await register("copies")).out).toBe(sound.out);
  const bytes = readFileSync(kept);
  bytes[bytes.indexOf("Simulated Person")]! ^= 1;
  writeFileSync(kept, bytes);
  const damaged = await register("copies", "--verify", "--format", "json");
  expect(damaged.code).toBe(1);
  const [first, second] = JSON.parse(damaged.out).copies;
  expect(first.found.problems[0]).toMatch(/^Row .* of athletes does not fit its checksum\.$/);
  expect([second.path, second.found.problems]).toEqual([place, []]);
  const listed = await register("copies");
  expect(listed.code).toBe(1);
  expect(listed.out).toContain("  Damaged: Row ");
  expect((await register("copies", "--verify=perhaps")).code).toBe(2);
});

test("copies ends with 1 where one cannot be reached, until a person says that it is gone", async () => {
  const { register, place } = await copied();
  const refused = await register("copies", "--gone", place);
  expect(refused).toMatchObject({ code: 2, err: `${place} is still there: delete it first. Nothing was changed.\n` });
  rmSync(place);
  const unreachable = await register("copies");
  expect(unreachable.code).toBe(1);
  expect(unreachable.out).toContain("\tunreachable\n  There is no such file: it was deleted or moved");
  const gone = await register("copies", "--gone", place);
  expect(gone.code).toBe(0);
  expect(gone.out).not.toContain(place);
  expect((await register("copies", "--gone", place)).code).toBe(2);
});

test("copies says what is under an earlier passphrase, what is sealed, and what a locked register cannot tell", async () => {
  const { folder, register, place } = await copied();
  const word = (name: string, text: string) => {
    writeFileSync(join(folder, name), `${text}\n`, { mode: 0o600 });
    return join(folder, name);
  };
  const [first, second] = [word("first", "nine grey geese walk"), word("second", "seven black swans fly")];
  const own = word("own", "carry it home at night");
  await register("protect", "--new-passphrase-file", first);
  const [earlier, sealed] = [join(folder, "earlier.sqlite"), join(folder, "sealed")];
  await register("backup", "--out", earlier, "--passphrase-file", first);
  await register("backup", "--out", sealed, "--passphrase-file", first, "--file-passphrase-file", own);
  await register("protect", "--passphrase-file", first, "--new-passphrase-file", second);
  const { code, out } = await register("copies", "--passphrase-file", second);
  expect(code).toBe(1);
  const lineOf = (path: string) => out.split("\n").findIndex((line) => line.startsWith(`${path}\t`));
  const lines = out.split("\n");
  expect(lines[lineOf(earlier)]).toContain("\tan earlier passphrase of the register\t");
  expect(lines[lineOf(earlier) + 1]).toContain("It is under an earlier passphrase of the register");
  expect(lines[lineOf(sealed)]).toContain("\ta passphrase of its own\tnever checked\t");
  expect(lines[lineOf(place) + 1]).toContain("The register is under a passphrase and this copy is not");
  const checked = await register("copies", "--verify", "--passphrase-file", second);
  expect(checked.err).toContain(`${sealed}: Its envelope was not opened: it is under a passphrase of its own.\n`);
  const opened = await register("copies", "--verify", "--passphrase-file", second, "--file-passphrase-file", own);
  expect(opened.err).toContain(`${sealed}: Its contents were not decrypted: its key is not at hand.\n`);
  const locked = await register("copies");
  expect(locked).toMatchObject({ code: 1 });
  expect(locked.err).toContain("The register is locked: copies elsewhere are not listed (3 noted)");
  expect(locked.out).not.toContain(place);
  expect(locked.out.startsWith(`${folder}`)).toBe(true);
});
