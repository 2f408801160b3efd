import { readRecording } from "../../../core/recording/read-recording.ts";
import type { LayoutAnswers } from "../../../core/recording/reading-statements.ts";
import type { ReadRecording } from "../../../core/recording/recording-as-read.ts";
import type { TableReading } from "../../../core/recording/request.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";

/** A text as it was read: its reading is that of a table. */
export interface ReadTextRecording extends ReadRecording {
  readonly reading?: TableReading;
}

/** Reads a text as one recording with the shipped settings. */
export function readText(
  text: string | Uint8Array,
  answers: LayoutAnswers = {},
  settings: Settings = defaultSettings,
): ReadTextRecording {
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  const { reading, ...read } = readRecording({ path: "trial.csv", bytes, sha256: "" }, answers, settings);
  if (reading?.kind === "c3d") throw new Error("A text was read as a C3D file.");
  return reading === undefined ? read : { ...read, reading };
}

/** Findings as "code:severity", in order. */
export function codesOf(read: ReadRecording): string[] {
  return read.findings.map((each) => `${each.code}:${each.severity}`);
}

/** Lines of a table: row `index` is `row(index)`. */
export function lines(count: number, row: (index: number) => string): string {
  return Array.from({ length: count }, (_, index) => `${row(index)}\n`).join("");
}

/** A two-plate recording at 1000 Hz with a header; every force differs, so that a mix-up shows. */
export function goodText(count = 200): string {
  return `time (s),left (N),right (N)\n${lines(count, (index) => `${(index / 1000).toFixed(3)},${(300 + index * 0.25).toFixed(2)},${(400 + index * 0.5).toFixed(2)}`)}`;
}
