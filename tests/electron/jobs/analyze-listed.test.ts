import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { analyzeSession } from "../../../core/analyze.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { noOtherTrials } from "../../../core/weight/session-weighing.ts";
import { listFolder, readSession } from "../../../electron/files/read-folder.ts";
import { analyzeListed } from "../../../electron/jobs/analyze-listed.ts";
import { startCrew } from "../../../electron/jobs/crew.ts";
import { SessionWork } from "../../../electron/jobs/session-work.ts";
import { sampleTracesFolder } from "../../../electron/program/program-folders.ts";
import { told } from "../../told.ts";
import { runInProcess } from "../command/run-in-process.ts";
import { describedSession, jumpText, temporaryFolder } from "../simulated-recordings.ts";

const folder = temporaryFolder();
afterAll(() => folder.remove());
folder.write(
  {
    ...describedSession(),
    "copy.csv": describedSession()["countermovement-both-1.csv"] ?? "",
    "notes.txt": "time (s);left (N)\n",
  },
  "session",
);
const root = join(folder.path, "session");
const said = { stated: {} };

describe("sharing the work on a session", () => {
  test.each([1, 2, 3])(
    "with %i threads gives what the analysis of all files at once gives, to the last bit",
    async (jobs) => {
      const [listed] = listFolder(root);
      if (listed === undefined) throw new Error("the folder holds recordings");
      const crew = startCrew(jobs);
      const progress: number[] = [];
      try {
        const shared = await analyzeListed(listed, said, defaultSettings, crew, ({ passes }) => progress.push(passes));
        expect(shared).toEqual(analyzeSession({ ...readSession(listed), ...said }, defaultSettings).result);
      } finally {
        await crew.close();
      }
      expect(progress.at(-1)).toBeGreaterThan(listed.names.length);
      expect(progress).toEqual(progress.toSorted((one, other) => one - other));
    },
  );

  test("the command line writes the same bytes for any number of threads", async () => {
    const maren = join(sampleTracesFolder(), "maren-tveitlund");
    const one = await runInProcess("analyze", maren, "--format", "json", "--jobs", "1");
    const two = await runInProcess("analyze", maren, "--format", "json", "--jobs", "2");
    expect(two).toEqual(one);
    expect(one.out.length).toBeGreaterThan(10_000);
  });

  test.each(["0", "-1", "1.5", "many", "65"])("--jobs %s is refused in a sentence", async (jobs) => {
    const { code, err } = await runInProcess("analyze", root, "--jobs", jobs);
    expect([code, err]).toEqual([2, `--jobs must be a whole number from 1 to 64, not "${jobs}".\n`]);
  });

  test("a file that changes between the passes is refused with the reason, not mixed from two versions", () => {
    const name = "changing.csv";
    writeFileSync(join(root, name), jumpText("both", 401));
    const session = {
      directory: root,
      statements: { folder: "", description: {}, descriptionFindings: [], ...said },
      settings: defaultSettings,
    };
    const pass = new SessionWork(session).weigh(name);
    if (pass.kind !== "recording") throw new Error("it is a recording");
    writeFileSync(join(root, name), jumpText("both", 403));
    // Another thread than the one that kept the drafts.
    const [trial] = new SessionWork(session).analyze(name, pass.sha256, noOtherTrials);
    expect(trial?.result.findings.map((each) => told(each)).map(({ message }) => message)).toEqual([
      "The file was changed or removed while the session was being analysed.",
    ]);
  });

  test("the outcome list names every file that asks or was refused, with the reason", async () => {
    const { err } = await runInProcess("analyze", root, "--format", "csv");
    expect(err).toMatch(/^refused notes\.txt: /m);
    expect(err).toMatch(/^refused countermovement-both-1\.csv: .*same recording|^refused copy\.csv: .*same recording/m);
    expect(err).toMatch(/^\d+ files: \d+ understood, (\d+ asks?, )?2 refused\.$/m);
  });
});
