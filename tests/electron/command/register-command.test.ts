import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { writtenTime } from "../../../electron/cautions/add-cautions.ts";
import { recordingBytes, temporaryFolder } from "../register/register-world.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { runInProcess } from "./run-in-process.ts";

/** A folder with one session of two recordings, and a register beside it that it was imported into. */
async function imported() {
  const folder = temporaryFolder();
  const recordings = join(folder, "recordings");
  mkdirSync(recordings);
  for (const number of [1, 2]) writeFileSync(join(recordings, `jump-${number}.csv`), recordingBytes(number));
  const session = { athlete: { code: "GH-99", name: "Simulated Person" }, date: "2026-10-13", involved: "left" };
  writeFileSync(join(recordings, "session.json"), JSON.stringify(session));
  const file = join(folder, "register.sqlite");
  const register = (command: string, ...rest: readonly string[]) =>
    runInProcess("register", command, "--register", file, ...rest);
  return { folder, recordings, file, register, first: await register("import", recordings) };
}

test("import makes a register, and importing again brings nothing twice", async () => {
  const { recordings, register, first } = await imported();
  expect(first).toEqual({ code: 0, out: "loose recordings: added, 2 recordings\n", err: "" });
  expect((await register("import", recordings)).out).toBe("loose recordings: already there, 0 recordings\n");
});

test("list shows athletes as lines and as JSON, and can be narrowed", async () => {
  const { register } = await imported();
  expect((await register("list")).out).toBe("GH-99\tSimulated Person\tinvolved: left\t1 session\t2026-10-13\n");
  const { out } = await register("list", "--format", "json");
  expect(JSON.parse(out)).toMatchObject({ athletes: [{ code: "GH-99", involved: "left", sessions: 1 }] });
  expect((await register("list", "--search", "nobody")).out).toBe("");
});

test("export and import carry an athlete to another register, under a passphrase", async () => {
  const { folder, register } = await imported();
  const archive = join(folder, "one.archive");
  const word = join(folder, "word");
  writeFileSync(word, `${strongPassphrase}\n`, { mode: 0o600 });
  const exported = await register("export", "--athlete", "GH-99", "--out", archive, "--file-passphrase-file", word);
  expect(exported).toMatchObject({ code: 0, err: "" });
  expect(exported.out).toContain("4 records and 2 recordings.");
  const other = ["--register", join(folder, "other.sqlite")];
  expect(await runInProcess("register", "import", archive, ...other)).toMatchObject({
    code: 2,
    err: "This archive is under a passphrase: give it to open it.\n",
  });
  expect((await runInProcess("register", "import", archive, ...other, "--file-passphrase-file", word)).code).toBe(0);
  expect((await runInProcess("register", "list", ...other)).out).toContain("GH-99");
});

test("where one of several things to import is refused, what came in before it is named", async () => {
  const { folder, register } = await imported();
  const [sound, damaged] = [join(folder, "sound.zip"), join(folder, "damaged.zip")];
  await register("export", "--out", sound);
  const bytes = readFileSync(sound);
  bytes[60]! ^= 1;
  writeFileSync(damaged, bytes);
  const other = ["--register", join(folder, "other.sqlite")];
  const { code, out, err } = await runInProcess("register", "import", sound, damaged, ...other);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toBe(
    `The archive is not as it was written: its checksum does not fit. Nothing of it was used. Imported before that: ${sound}.\n`,
  );
  expect((await runInProcess("register", "list", ...other)).out).toContain("GH-99");
});

test("a folder in which there is nothing to read is refused", async () => {
  const { folder, register } = await imported();
  mkdirSync(join(folder, "empty"));
  expect(await register("import", join(folder, "empty"))).toMatchObject({ code: 2, out: "" });
});

test("backup, restore and verify: a restoration is shown first and done when it is confirmed", async () => {
  const { folder, register } = await imported();
  const backup = join(folder, "elsewhere.sqlite");
  expect((await register("backup", "--out", backup)).code).toBe(0);
  expect((await register("backup")).out).toContain("was made and opened again to check it.");
  const shown = await register("restore", backup);
  expect(shown).toMatchObject({ code: 0, err: "Nothing was replaced. --confirm replace restores it.\n" });
  expect(shown.out).toContain("holds 1 athlete, 1 session and 2 recordings");
  expect((await register("restore", backup, "--confirm", "replace")).code).toBe(0);
  expect(await register("verify")).toMatchObject({ code: 0, err: "" });
});

test("verify ends with 1 and names what is damaged", async () => {
  const { file, register } = await imported();
  const bytes = readFileSync(file);
  bytes[bytes.indexOf("Simulated Person")]! ^= 1;
  writeFileSync(file, bytes);
  const { code, out, err } = await register("verify", "--format", "json");
  expect(code).toBe(1);
  expect(JSON.parse(out)).toMatchObject({
    problems: [expect.stringMatching(/of athletes does not fit its checksum/), expect.anything()],
  });
  expect(err).toContain("One row of the register is damaged and not shown");
  // What is sound is still shown.
  expect((await register("list")).code).toBe(1);
});

test("erase shows what it would remove and erases when the code is repeated", async () => {
  const { file, register } = await imported();
  const shown = await register("erase", "--athlete", "GH-99");
  expect(shown.out).toBe("GH-99: 1 session, 2 recordings and 0 other records, also in 1 backup.\n");
  expect(shown.err).toContain("Nothing was erased.");
  expect((await register("erase", "--athlete", "GH-99", "--confirm", "GH-98")).code).toBe(2);
  expect((await register("erase", "--athlete", "GH-99", "--confirm", "GH-99")).code).toBe(0);
  expect((await register("list")).out).toBe("");
  expect(readFileSync(file).includes("Simulated Person")).toBe(false);
});

test("protect locks the register to everyone without the passphrase, and unprotect opens it again", async () => {
  const { folder, register } = await imported();
  const word = join(folder, "word");
  writeFileSync(word, `${strongPassphrase}\n`, { mode: 0o600 });
  expect((await register("protect", "--new-passphrase-file", word)).code).toBe(0);
  expect(await register("list")).toMatchObject({
    code: 2,
    err: "The register is under a passphrase: --passphrase-file FILE gives it.\n",
  });
  // Locked, only checksums can be looked at: that is said, and is not all.
  const { code, out, err } = await register("verify", "--format", "json");
  expect(code).toBe(1);
  expect(JSON.parse(out)).toMatchObject({ problems: [], contentsChecked: false });
  expect(err).toContain("contents were not decrypted");
  expect((await register("verify", "--passphrase-file", word)).code).toBe(0);
  expect((await register("list", "--passphrase-file", word)).out).toContain("GH-99");
  expect((await register("unprotect", "--passphrase-file", word)).code).toBe(0);
  expect((await register("list")).out).toContain("GH-99");
});

test("what is typed wrongly is said before a register is opened or made", async () => {
  const { folder, register } = await imported();
  expect(await register("tidy")).toMatchObject({
    code: 2,
    err: expect.stringContaining('There is no register command "tidy"'),
  });
  expect(await runInProcess("register", "list")).toMatchObject({
    code: 2,
    err: "--register FILE says which register is meant.\n",
  });
  expect(await register("export")).toMatchObject({ code: 2, err: "--out FILE.zip is needed.\n" });
  expect(await register("list", "extra")).toMatchObject({ code: 2, err: "register list takes no extra.\n" });
  expect(await register("list", "--passphrase-file", join(folder, "none"))).toMatchObject({ code: 2 });
  expect(await runInProcess("register", "list", "--register", join(folder, "none"))).toMatchObject({ code: 2 });
  expect(await runInProcess("register", "--help")).toMatchObject({
    code: 0,
    out: expect.stringContaining("Exit codes"),
  });
});

test("imported sessions without answers are stated to be not known by name, once, and never those of today", async () => {
  const { folder, recordings } = await imported();
  const live = join(folder, "live");
  mkdirSync(live);
  writeFileSync(join(live, "jump.csv"), recordingBytes(3));
  const today = writtenTime(new Date()).slice(0, 10);
  writeFileSync(join(live, "session.json"), JSON.stringify({ athlete: { code: "GH-98" }, date: today }));
  const other = ["--register", join(folder, "other.sqlite")];
  const stated = ["--cautions", "not-known", "--by", "K. L."];
  const { code, out, err } = await runInProcess("register", "import", recordings, live, ...other, ...stated);
  expect(out).toBe("loose recordings: added, 2 recordings, cautions not known\nloose recordings: added, 1 recording\n");
  expect(err).toContain("loose recordings: Of today's session nobody can state that the cautions are not known");
  expect(code).toBe(1);
  const again = await runInProcess("register", "import", recordings, ...other, ...stated);
  expect(again.out).not.toContain("not known");
  const nameless = await runInProcess("register", "import", recordings, ...other, "--cautions", "not-known");
  expect(nameless).toMatchObject({ code: 2, err: expect.stringContaining("--by NAME") });
});

test("--by names who acts, the journal shows it, and a command that writes nothing takes none", async () => {
  const { folder, register } = await imported();
  const archive = join(folder, "all.zip");
  expect((await register("export", "--out", archive, "--by", "Kari Lund")).code).toBe(0);
  const { out } = await register("journal");
  expect(out.split("\n")[0]).toMatch(/^\d+\t\S+\tcopy made elsewhere\tKari Lund\tuser /);
  expect(out).toContain("register made\tno name given\tuser ");
  expect(JSON.parse((await register("journal", "--format", "json")).out).entries[0]).toMatchObject({ by: "Kari Lund" });
  expect(await register("list", "--by", "Kari Lund")).toMatchObject({ code: 2, out: "" });
  expect(await register("backup", "--by", "")).toMatchObject({ code: 2, out: "" });
});
