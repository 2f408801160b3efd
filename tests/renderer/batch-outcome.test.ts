import { describe, expect, it } from "vitest";
import { proseFinding } from "../../core/ground/finding.ts";
import type { RecordingView, Workspace } from "../../electron/boundary/workspace-view.ts";
import {
  failedFiles,
  leftAsideOf,
  outcomeLines,
  outcomeReport,
  outcomeSummary,
} from "../../renderer/recordings/batch-outcome.ts";
import type { BatchFile, TakenIn } from "../../renderer/recordings/take-in.ts";

const file = (path: string, outcome: BatchFile["outcome"], message = "1 trial."): BatchFile => ({
  picked: { path, read: async () => new Uint8Array() },
  folder: "day",
  outcome,
  message,
});

const taken: TakenIn = {
  batch: "first",
  cancelled: false,
  places: [],
  files: [
    file("day/session.json", "session", "Describes the session."),
    file("day/a.csv", "understood"),
    file("day/b.csv", "asks", "Nothing says the unit."),
    file("day/=c.csv", "refused", 'Said "no", twice.'),
    file("day/d.csv", "not read"),
  ],
};

const view = (name: string, outcome: RecordingView["outcome"], refusal = ""): RecordingView => ({
  file: name,
  byteLength: 1,
  outcome,
  findings: refusal === "" ? [] : [proseFinding("test-not-stated", "refusal", refusal, "State it.")],
  trials: 2,
  sameAs: [],
});

const open = (folder: string, recordings: readonly RecordingView[]): Workspace => ({
  demo: false,
  sessions: [],
  folder,
  recordings,
  undo: "",
  redo: "",
  effect: "",
  unsaved: false,
  layouts: [],
  unusableLayouts: [],
});

describe("the outcome of a batch", () => {
  it("counts recordings by what became of them; a session.json that was read well is none", () => {
    const lines = outcomeLines(taken, open("elsewhere", []));
    expect(outcomeSummary(lines)).toBe("4 recordings: 1 understood, 1 asks for something, 1 refused, 1 not read.");
    expect(outcomeSummary(lines.slice(0, 1))).toBe("1 recording, all understood.");
  });

  it("names what was left aside beside the recordings, in the report too", () => {
    const aside = { ...file("day/a.png", "left aside", "This is a picture."), kind: "picture" as const };
    const mixed = { ...taken, files: [...taken.files, aside] };
    expect(outcomeLines(mixed, open("", []))).toEqual(outcomeLines(taken, open("", [])));
    expect(leftAsideOf(mixed)).toBe("Left aside, as it is no recording: 1 picture (day/a.png).");
    const report = new TextDecoder().decode(outcomeReport([], mixed).bytes);
    expect(report).toBe("file,session,outcome,reason\r\nday/a.png,,left aside,This is a picture.\r\n");
  });

  it("follows what was answered since in the session that is shown", () => {
    const lines = outcomeLines(taken, open("day", [view("b.csv", "understood"), view("a.csv", "asks", "Which test?")]));
    expect(lines.map(({ name, kind, message }) => `${name} ${kind}: ${message}`).slice(0, 2)).toEqual([
      "a.csv asks: Which test? State it.",
      "b.csv understood: 2 trials",
    ]);
    expect(failedFiles(taken, lines).map(({ path }) => path)).toEqual(["day/a.csv", "day/=c.csv", "day/d.csv"]);
  });

  it("is saved as a table whose cells stay text", () => {
    const { name, bytes } = outcomeReport(outcomeLines(taken, open("", [])).slice(2, 3), { files: [] });
    expect(name).toBe("recordings-taken-in.csv");
    expect(new TextDecoder().decode(bytes)).toBe(
      'file,session,outcome,reason\r\nday/=c.csv,day,refused,"Said ""no"", twice."\r\n',
    );
    const loose = outcomeReport([{ path: "=c.csv", name: "=c.csv", kind: "refused", message: "x" }], { files: [] });
    expect(new TextDecoder().decode(loose.bytes)).toContain("'=c.csv,,refused,x");
  });
});
