import { mkdirSync, truncateSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { SessionWatch } from "../../../electron/watch/session-watch.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { runInProcess } from "../command/run-in-process.ts";
import { temporaryFolder, testRegister } from "../register/register-world.ts";
import { ownWorld } from "../register-host/host-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";

const picture = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 1, 2, 3]);
const rows = `time (s),left (N),right (N)\n${"0.001,310.25,330.5\n".repeat(3)}`;

/** A clinician's folder: one recording, one that cannot be read, 15 pictures and other files. */
function mixedFolder(): string {
  const folder = join(temporaryFolder(), "day");
  mkdirSync(folder);
  writeFileSync(join(folder, "jump.csv"), rows);
  writeFileSync(join(folder, "names-only.csv"), "time (s),left (N),right (N)\n");
  for (let index = 1; index <= 15; index++) writeFileSync(join(folder, `IMG_${index}.jpg`), picture);
  writeFileSync(join(folder, "to-do.txt"), "call the surgeon\n");
  writeFileSync(join(folder, "letter.pdf"), "%PDF-1.4\n");
  return folder;
}

const said =
  "Left aside, as they are no recordings: 15 pictures (IMG_1.jpg, IMG_10.jpg, IMG_11.jpg and 12 more), 1 document (letter.pdf) and 1 text (to-do.txt).";

describe("what is no recording never gets in, and is named", () => {
  test("by the command line, analysing a folder: no trial of it, and one sentence", async () => {
    const ran = await runInProcess("analyze", mixedFolder(), "--format", "json");
    expect(
      ran.err
        .split("\n")
        .filter((line) => line.startsWith("Left aside"))
        .map(sorted),
    ).toEqual([sorted(said)]);
    const files = (JSON.parse(ran.out).trials as readonly { readonly file: string }[]).map(({ file }) => file);
    expect(files).toEqual(["jump.csv", "names-only.csv"]);
  });

  test("by the command line, importing into a register: the recordings alone come in", async () => {
    const register = join(temporaryFolder(), "register.sqlite");
    const ran = await runInProcess("register", "import", mixedFolder(), "--register", register, "--format", "json");
    expect(JSON.parse(ran.out).sessions).toMatchObject([{ outcome: "added", recordings: 2 }]);
    expect(sorted(ran.err)).toContain(sorted(said));
  });

  test("what session.json calls a recording stays, by folder and by dropping, and is refused with its reason", async () => {
    const folder = mixedFolder();
    const description = JSON.stringify({ files: [{ file: "to-do.txt", test: "countermovementJump" }] });
    writeFileSync(join(folder, "session.json"), description);
    const ran = await runInProcess("analyze", folder);
    expect(ran.err).toContain("refused to-do.txt: The text holds no rows of numbers.");
    const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
    workspace.add("day/session.json", bytesOf(description), "one");
    expect(workspace.add("day/to-do.txt", bytesOf("call the surgeon\n"), "one").outcome).toBe("refused");
    expect(workspace.add("day/other.txt", bytesOf("call the surgeon\n"), "one").outcome).toBe("left aside");
  });

  test("by a folder without any recording: it is said that there is none", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "a.png"), picture);
    const ran = await runInProcess("analyze", folder);
    expect([ran.code, ran.out]).toEqual([2, ""]);
    expect(ran.err).toContain("There are no recordings in");
    expect(ran.err).toContain("1 picture (a.png)");
  });

  test("by dropping files, or adding them to a session of the register", async () => {
    const { host, home, athlete } = await ownWorld();
    const session = crypto.randomUUID();
    await host.call("sessions.start", { session, athlete, plan: { date: "2026-11-02" } });
    for (const path of ["A-1/2026-11-02/jump.csv", "loose/jump.csv"]) {
      const taken = await host.call("recordings.add", { path, bytes: picture });
      expect(taken).toMatchObject({ outcome: "left aside", kind: "picture" });
      expect(taken.message).toBe("This is a picture and no recording; it was left aside.");
    }
    expect(home.register.reads.records("recordings")).toEqual([]);
    expect((await host.call("workspace.read", {})).sessions).toHaveLength(1);
  });

  test("by a watched folder: the picture is named, and the newest recording stays the newest", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "a.csv"), jumpText("both", 601));
    const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
    const watch = new SessionWatch(workspace, {
      report: (error) => {
        throw error;
      },
    });
    watch.start(folder);
    onTestFinished(() => watch.stop());
    await expect.poll(() => watch.read().newest?.file, { timeout: 20_000 }).toBe("a.csv");
    writeFileSync(join(folder, "b.png"), picture);
    await expect.poll(() => watch.read().notTaken, { timeout: 20_000 }).toHaveLength(1);
    const view = watch.read();
    expect(view.notTaken).toEqual(["Left aside, as it is no recording: 1 picture (b.png)."]);
    expect([view.newest?.file, view.taken]).toEqual(["a.csv", 1]);
    expect(workspace.sessions.map(({ folder: each, files }) => [each, files.length])).toEqual([[basename(folder), 1]]);
  });

  test("by the register's own import, whatever handed it over", async () => {
    const register = await testRegister();
    const files = [recordingFile("a.png", picture), recordingFile("a.csv", bytesOf(rows))];
    const imported = importSession(register, {
      folder: "day",
      files,
      unreadable: [],
      description: { date: "2026-11-02" },
      descriptionFindings: [],
    });
    expect(imported).toMatchObject({ recordings: 1, notes: ["Left aside, as it is no recording: 1 picture (a.png)."] });
  });
});

describe("an old register that holds pictures as recordings", () => {
  async function oldRegister() {
    const register = await testRegister();
    const session = register.writes.act("recordings imported", (changes) => {
      const athlete = changes.add("athletes", {}, { code: "A-1" });
      const made = changes.add("sessions", { athlete }, { folder: "day", date: "2026-11-02" });
      changes.addRecording(made, "a.csv", bytesOf(rows));
      changes.addRecording(made, "a.png", picture);
      return made;
    });
    return { register, session };
  }

  test("opens as before, with all of them", async () => {
    const { register, session } = await oldRegister();
    expect(register.reads.sessionInput(session)?.files.map(({ path }) => path)).toEqual(["a.csv", "a.png"]);
  });

  test("is taken over from its archive with the pictures in the bin, and nothing of it is lost", async () => {
    const { register } = await oldRegister();
    const path = join(temporaryFolder(), "old.zip");
    writeArchive(register, path);
    const other = await testRegister();
    const merged = await mergeArchive(other, path);
    expect(merged).toMatchObject({ recordings: 1 });
    expect(merged.notes.join(" ")).toContain("1 picture (a.png). They lie in the bin.");
    expect(other.reads.records("recordings").map(({ content }) => content.path)).toEqual(["a.csv"]);
    expect(other.reads.bin().map(({ kind }) => kind)).toEqual(["recordings"]);
    expect(other.verify().problems).toEqual([]);
  });
});

describe("one file that is too large costs the others nothing", () => {
  /** A file without content on the disk, of this size. */
  function sparse(folder: string, name: string, megabytes: number): void {
    writeFileSync(join(folder, name), "time (s)\n");
    truncateSync(join(folder, name), megabytes * 1024 * 1024);
  }

  test("in a watched folder", async () => {
    const folder = temporaryFolder();
    sparse(folder, "a-large.csv", 65);
    writeFileSync(join(folder, "b.csv"), rows);
    const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
    const watch = new SessionWatch(workspace, {
      report: (error) => {
        throw error;
      },
    });
    watch.start(folder);
    onTestFinished(() => watch.stop());
    await expect.poll(() => watch.read().newest?.file, { timeout: 20_000 }).toBe("b.csv");
    const view = watch.read();
    expect(view.notTaken).toEqual([expect.stringMatching(/^a-large\.csv was left out: it is larger than 64 MB/)]);
    expect(view.writing).toEqual([]);
  });

  test("in a folder on the command line, analysed or imported", async () => {
    const folder = temporaryFolder();
    sparse(folder, "a-large.csv", 1025);
    writeFileSync(join(folder, "b.csv"), rows);
    const analysed = await runInProcess("analyze", folder);
    expect(analysed.err).toContain("refused a-large.csv: The file could not be read because it is larger than 1 GB");
    expect(analysed.err).toContain("2 files:");
    const register = join(temporaryFolder(), "register.sqlite");
    const imported = await runInProcess("register", "import", folder, "--register", register);
    expect(imported.out).toContain("added, 1 recording");
    expect(imported.err).toContain("a-large.csv was left out because it is larger than 1 GB.");
  });
});

test("a recording that no row of the register can hold costs the others of its session nothing", async () => {
  const register = await testRegister();
  const file = { path: "b.csv", sha256: "", bytes: new Uint8Array(900_000_001) };
  const imported = importSession(register, {
    folder: "day",
    files: [recordingFile("a.csv", bytesOf(rows)), file],
    unreadable: [],
    description: { date: "2026-11-02" },
    descriptionFindings: [],
  });
  expect(imported).toMatchObject({
    recordings: 1,
    notes: ["b.csv was left out because it is larger than 900 MB, the most that a register keeps of one recording."],
  });
});

/** Names within the brackets come in the order of the disk's listing; the sentence is the same in any order. */
function sorted(sentence: string): string {
  return [...sentence.replace(/IMG_\d+/g, "IMG")].join("").replace(/\s+/g, " ").trim();
}
