import { describe, expect, test } from "vitest";
import { analyzeSession } from "../../../core/analyze.ts";
import { draftFile } from "../../../core/session/file-trials.ts";
import type { SessionAnalysis } from "../../../core/session/session-analysis.ts";
import type { SessionInput } from "../../../core/session/session-input.ts";
import { traceTrial } from "../../../core/session/trace-trial.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { Layout } from "../../../core/stated/layout.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { KeptSteps } from "../../../electron/workspace/kept-steps.ts";
import { bytesOf, jumpText, sessionDescription, sessionFiles } from "../simulated-recordings.ts";

const files = Object.entries(sessionFiles).map(([name, text]) => recordingFile(name, bytesOf(text)));

function input(description: SessionDescription, more: Partial<SessionInput> = {}): SessionInput {
  return { folder: "month-7", files, unreadable: [], description, descriptionFindings: [], stated: {}, ...more };
}

const [first, second] = Object.keys(sessionFiles);
const entries = sessionDescription.files ?? [];
const withEntry = (change: object): SessionDescription => ({
  ...sessionDescription,
  files: entries.map((entry) => (entry.file === first ? { ...entry, ...change } : entry)),
});

describe("kept steps", () => {
  const descriptions: readonly (readonly [string, SessionDescription])[] = [
    ["nothing changed", sessionDescription],
    ["another pain", { ...sessionDescription, pain: 4 }],
    ["an entered mass", { ...sessionDescription, massKg: 66 }],
    ["another gravity", { ...sessionDescription, gravity: 9.78 }],
    ["a trial seen", withEntry({ seen: true })],
    ["a trial excluded", withEntry({ excluded: { reason: "hand on the rail" } })],
    ["the plates swapped", withEntry({ swapPlates: true })],
    ["a moved event", withEntry({ events: [{ name: "takeoff", time: 2.5 }] })],
    ["the feet stated for the session", { ...sessionDescription, plates: [{ column: "left (N)", foot: "right" }] }],
    ["another test", withEntry({ test: "squatJump" })],
  ];

  test("give the numbers of an analysis from the beginning, bit for bit, after any statement", () => {
    const steps = new KeptSteps();
    for (const [what, description] of [...descriptions, ...descriptions.toReversed()]) {
      const kept = analyzeSession(input(description), defaultSettings, steps);
      const anew = analyzeSession(input(description), defaultSettings);
      expect(JSON.stringify(kept.result), what).toBe(JSON.stringify(anew.result));
    }
  });

  test("cut one file again for a change at one trial, and none for a change of what is said about the session", () => {
    const kept = new KeptSteps();
    analyzeSession(input(sessionDescription), defaultSettings, kept);
    const before = files.map((file) => kept.draftFile(file, input(sessionDescription), defaultSettings));
    const again = (description: SessionDescription) =>
      files.filter((file, index) => kept.draftFile(file, input(description), defaultSettings) !== before[index]).length;
    expect(again({ ...sessionDescription, pain: 9, involved: "left" })).toBe(0);
    expect(again(withEntry({ seen: true }))).toBe(1);
  });

  test("never give one file's draft for other bytes of the same name", () => {
    const steps = new KeptSteps();
    analyzeSession(input(sessionDescription), defaultSettings, steps);
    const other = recordingFile(String(first), bytesOf(jumpText("both", 901)));
    const session = input(sessionDescription, { files: [other] });
    const { weighed, drafts, read } = steps.draftFile(other, session, defaultSettings);
    const anew = draftFile(other, session, defaultSettings);
    const text = JSON.stringify([anew.weighed, anew.drafts, anew.read.recording]);
    expect(JSON.stringify([weighed, drafts, read.recording]) === text).toBe(true);
  });

  test("read a file again for a saved layout of its shape and for no other", () => {
    const steps = new KeptSteps();
    const [file] = files;
    if (file === undefined) throw new Error("There is no file.");
    const said = input(sessionDescription);
    const { read } = steps.draftFile(file, said, defaultSettings);
    if (read.reading?.kind !== "delimited") throw new Error("The file is a table.");
    const layout = (columns: Layout["shape"]["columns"]): Layout => ({
      schemaVersion: 1,
      name: "of the laboratory",
      shape: { ...(read.reading as { readonly shape: Layout["shape"] }).shape, columns },
      answers: { swapPlates: true },
    });
    const { columns } = read.reading.shape;
    const others = { ...said, layouts: [layout(columns.slice(1))] };
    expect(steps.draftFile(file, others, defaultSettings).read).toBe(read);
    const fitting = { ...said, layouts: [layout(columns)] };
    expect(steps.draftFile(file, fitting, defaultSettings).read.reading).toHaveProperty("layout", "of the laboratory");
  });

  test("keep the samples of the files last used alone, and make those of the others again as they were", () => {
    const [one, two] = [first, second].map((name) => files.find((file) => file.path === name));
    if (one === undefined || two === undefined) throw new Error("Two files were asked for.");
    const steps = new KeptSteps(1);
    const said = input(sessionDescription);
    const kept = steps.draftFile(one, said, defaultSettings);
    const { drafts } = kept;
    expect(kept.drafts === drafts).toBe(true);
    steps.draftFile(two, said, defaultSettings);
    expect(steps.draftFile(one, said, defaultSettings)).toBe(kept);
    expect(kept.drafts === drafts).toBe(false);
    expect(JSON.stringify(kept.drafts) === JSON.stringify(drafts)).toBe(true);
  });

  test("draw the same curves whether samples were kept or not", () => {
    const session = input(sessionDescription);
    const [kept, small, anew] = [
      analyzeSession(session, defaultSettings, new KeptSteps()),
      analyzeSession(session, defaultSettings, new KeptSteps(1)),
      analyzeSession(session, defaultSettings),
    ];
    const drawn = anew.result.trials.filter(({ status }) => status !== "refused");
    expect(drawn.length).toBeGreaterThan(2);
    for (const { file, trial } of [...drawn.slice(0, 1), ...drawn.slice(-1)]) {
      const drawnFrom = (analysis: SessionAnalysis) =>
        JSON.stringify(traceTrial(analysis, file, trial, defaultSettings));
      expect(drawnFrom(anew).length).toBeGreaterThan(10_000);
      expect(drawnFrom(kept) === drawnFrom(anew)).toBe(true);
      expect(drawnFrom(small) === drawnFrom(anew)).toBe(true);
    }
  });
});
