import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Limb } from "../../core/ground/limb.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { notKnown } from "../core/gate/gates.ts";

/** A simulated jump as the text a plate computer would write. */
export function jumpText(limb: Limb, seed: number, heightMetres = 0.25): string {
  const jump = simulateCountermovementJump({
    seed,
    rateHz: 1000,
    massKg: 68,
    limb,
    plates: "two",
    jumpHeightMetres: heightMetres,
    swayMetres: 0.0005,
    plateNoiseNewtons: 1.5,
  });
  return recordingText(jump);
}

/** A simulated recording of two plates as the text a plate computer would write. */
export function recordingText(recording: SimulatedRecording): string {
  const [first, second] = recording.plates;
  if (first === undefined || second === undefined) throw new Error("Two plates were asked for.");
  const lines = Array.from({ length: recording.sampleCount }, (_, index) => {
    const cells = [first.force[index], second.force[index]].map((force) => (force ?? 0).toFixed(2));
    return `${(index / recording.rateHz).toFixed(3)},${cells.join(",")}`;
  });
  return `time (s),left (N),right (N)\n${lines.join("\n")}\n`;
}

/** A session of simulated jumps: two-leg ones and three of each leg. */
export const sessionFiles: Readonly<Record<string, string>> = {
  "countermovement-both-1.csv": jumpText("both", 101),
  "countermovement-both-2.csv": jumpText("both", 103),
  "countermovement-both-3.csv": jumpText("both", 105),
  "countermovement-left-1.csv": jumpText("left", 107, 0.13),
  "countermovement-left-2.csv": jumpText("left", 109, 0.125),
  "countermovement-left-3.csv": jumpText("left", 111, 0.135),
  "countermovement-right-1.csv": jumpText("right", 113, 0.105),
  "countermovement-right-2.csv": jumpText("right", 115, 0.11),
  "countermovement-right-3.csv": jumpText("right", 117, 0.1),
};

/** What is said about it. */
export const sessionDescription: SessionDescription = {
  athlete: { code: "GH-07", name: "Maren Tveitlund" },
  involved: "right",
  date: "2026-10-14",
  milestone: "month 7",
  pain: 1,
  ...notKnown,
  effusion: "none",
  simulated: true,
  files: Object.keys(sessionFiles).map((file) => ({
    file,
    test: "countermovementJump",
    limb: file.includes("both") ? "both" : file.includes("left") ? "left" : "right",
  })),
};

/** The session's files with its session.json. */
export function describedSession(): Readonly<Record<string, string>> {
  return { ...sessionFiles, "session.json": JSON.stringify(sessionDescription) };
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A folder of its own that is gone after `remove`. */
export function temporaryFolder(): { readonly path: string; readonly write: Write; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), "counterpoise-"));
  return {
    path,
    write(files, below = "") {
      for (const [name, content] of Object.entries(files)) {
        const place = join(path, below, name);
        mkdirSync(dirname(place), { recursive: true });
        writeFileSync(place, content);
      }
    },
    remove: () => rmSync(path, { recursive: true, force: true }),
  };
}

type Write = (files: Readonly<Record<string, string | Uint8Array>>, below?: string) => void;
