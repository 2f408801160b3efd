import { execFileSync } from "node:child_process";
import { symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { resultCsvColumns } from "../../../core/sheet/result-csv.ts";
import { listFolder, listLooseFiles, readFolder, readSession } from "../../../electron/files/read-folder.ts";
import { temporaryFolder } from "../simulated-recordings.ts";

let folder: ReturnType<typeof temporaryFolder>;

beforeEach(() => {
  folder = temporaryFolder();
});

afterEach(() => folder.remove());

const listed = () => listFolder(folder.path).map(({ folder: name, names }) => [name, names]);

describe("finding recordings", () => {
  test("each folder with recordings is one session, sorted by path, and folders without are none", () => {
    folder.write({ "b/2.csv": "", "b/1.csv": "", "a/deep/er/x.txt": "", "z.csv": "", "none/README.md": "" });
    expect(listed()).toEqual([
      ["", ["z.csv"]],
      ["a/deep/er", ["x.txt"]],
      ["b", ["1.csv", "2.csv"]],
    ]);
  });

  test("hidden files and folders, session.json, notes and documents are no recordings", () => {
    folder.write({
      ".hidden.csv": "",
      ".git/x.csv": "",
      "session.json": "{}",
      "README.md": "",
      "expected.JSON": "",
      "notes.MD": "",
      "jump.csv": "",
    });
    expect(listed()).toEqual([["", ["jump.csv"]]]);
  });

  test("a link that leads nowhere is reported and costs nothing else", () => {
    folder.write({ "good.csv": "1" });
    symlinkSync(join(folder.path, "gone.csv"), join(folder.path, "dangling.csv"));
    const [session] = readFolder(folder.path);
    expect(session?.files.map((file) => file.path)).toEqual(["good.csv"]);
    expect(session?.unreadable).toEqual([{ path: "dangling.csv", reason: "is a link to something that is not there" }]);
  });

  test("a folder that holds nothing but a link that leads nowhere is still a session", () => {
    symlinkSync("gone", join(folder.path, "dangling.csv"));
    expect(listFolder(folder.path)).toHaveLength(1);
  });

  test("links that lead in a circle end, and a folder reached twice is read once", () => {
    folder.write({ "a/x.csv": "1" });
    symlinkSync(folder.path, join(folder.path, "a/back"));
    symlinkSync(join(folder.path, "a"), join(folder.path, "twice"));
    symlinkSync("self.csv", join(folder.path, "a/self.csv"));
    const sessions = readFolder(folder.path);
    expect(sessions.map((session) => session.folder)).toEqual(["a"]);
    expect(sessions[0]?.unreadable.map((each) => each.path)).toEqual(["self.csv"]);
  });

  test.skipIf(process.platform === "win32")("a pipe is reported, never opened", () => {
    execFileSync("mkfifo", [join(folder.path, "pipe.csv")]);
    expect(readFolder(folder.path)[0]?.unreadable).toEqual([{ path: "pipe.csv", reason: "is not a regular file" }]);
  });
});

describe("reading a session", () => {
  test("bytes are kept as they lie there, with their hash", () => {
    const bytes = Uint8Array.of(0xef, 0xbb, 0xbf, 0x31, 13, 10);
    folder.write({ "odd.csv": bytes });
    const file = readFolder(folder.path)[0]?.files[0];
    expect(new Uint8Array(file?.bytes ?? [])).toEqual(bytes);
    // From `printf '\\xef\\xbb\\xbf1\\r\\n' | sha256sum` (GNU coreutils).
    expect(file?.sha256).toBe("07846b783c23904a75834c1932bc2fad41e388e18bc32ffd73ed87bfa3844d87");
  });

  test("session.json describes its own folder and no other", () => {
    folder.write({ "a/x.csv": "", "a/session.json": '{"involved":"left"}', "b/y.csv": "" });
    expect(readFolder(folder.path).map((session) => session.description)).toEqual([{ involved: "left" }, {}]);
  });

  test("a session.json that cannot be read is a finding, not a stop", () => {
    folder.write({ "x.csv": "" });
    symlinkSync("gone", join(folder.path, "session.json"));
    const [session] = readFolder(folder.path);
    expect(session?.descriptionFindings.map((each) => each.code)).toEqual(["session-unreadable"]);
    expect(session?.files).toHaveLength(1);
  });

  test("single files are described by the session.json beside them, as far as it speaks of them", () => {
    folder.write({
      "x.csv": "",
      "y.csv": "",
      "session.json": '{"involved":"left","files":[{"file":"x.csv","limb":"left"},{"file":"y.csv","limb":"right"}]}',
    });
    const [session] = listLooseFiles([join(folder.path, "y.csv")]).map(readSession);
    expect(session?.files.map((file) => file.path)).toEqual(["y.csv"]);
    expect(session?.description).toEqual({ involved: "left", files: [{ file: "y.csv", limb: "right" }] });
  });
});

describe("what lies beside recordings", () => {
  test("a session.json that is a pipe is reported at once and never waited for", () => {
    folder.write({ "good.csv": "1" });
    execFileSync("mkfifo", [join(folder.path, "session.json")]);
    const [session] = readFolder(folder.path);
    expect(session?.files).toHaveLength(1);
    expect(session?.descriptionFindings.map((each) => each.code)).toEqual(["session-unreadable"]);
  });

  test("the program's own table of results, saved among the recordings, is not read as one", () => {
    const own = `${resultCsvColumns.join(",")}\njump.csv,1,,,refused,,,,,,,empty,,0.1.0,abc\n`;
    folder.write({ "good.csv": "1", "results.csv": own });
    expect(readFolder(folder.path)[0]?.files.map((file) => file.path)).toEqual(["good.csv"]);
  });
});
