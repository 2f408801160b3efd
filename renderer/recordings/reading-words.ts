import { countOf } from "../../core/plain-words.ts";
import { c3dFormWords } from "../../core/recording/c3d/c3d-lines.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { RecordingView } from "../../electron/host-api.ts";

/** The outcome of a file in a word. */
export function outcomeWords(outcome: RecordingView["outcome"]): string {
  switch (outcome) {
    case "understood":
      return "understood";
    case "asks":
      return "asks for something";
    case "refused":
      return "refused";
  }
}

/** "semicolon, decimal comma · two plates: left, right · N · 1000 Hz". */
export function readingWords(reading: FileReading): string {
  const unit = reading.forceUnit ?? "unit unknown";
  const rate = reading.rateHz === undefined ? "rate unknown" : `${reading.rateHz} Hz`;
  return [dialectWords(reading), forceWords(reading), unit, rate].join(" · ");
}

/** Where unit and rate come from: "unit N, from the header · rate 1000 Hz, stated". */
export function originWords(reading: FileReading): string {
  return `unit ${unitWords(reading)} · rate ${rateWords(reading)}`;
}

/** How a file is written: "UTF-8 · 3 header lines · 200 rows", "Intel byte order, integers · 89 frames". */
export function formWords(reading: FileReading): string {
  if (reading.kind === "c3d") return `${c3dFormWords(reading)} · ${countOf(reading.frames, "frame")}`;
  const { encoding, headerLines, rows } = reading;
  return `${encoding} · ${countOf(headerLines, "header line")} · ${countOf(rows, "row")}`;
}

function dialectWords(reading: FileReading): string {
  if (reading.kind === "c3d") return `C3D, ${reading.byteOrder} byte order`;
  const { delimiter, decimalMark } = reading;
  return `${delimiter === "none" ? "one column" : delimiter}, decimal ${decimalMark}`;
}

function forceWords({ columns }: FileReading): string {
  const forces: readonly FileReading["columns"][number][] = columns.filter((column) => column.role === "force");
  if (forces.length === 0) return "no force column";
  const limbs = forces.flatMap((column) => column.limb ?? []).map((limb) => (limb === "both" ? "total" : limb));
  const plates = forces.length === 1 ? "one plate" : "two plates";
  return limbs.length === 0 ? plates : `${plates}: ${limbs.join(", ")}`;
}

function unitWords({ forceUnit, forceUnitFrom }: FileReading): string {
  if (forceUnit === undefined) return "unknown";
  return `${forceUnit}, ${forceUnitFrom === "stated" ? "stated" : `from the ${forceUnitFrom}`}`;
}

function rateWords({ rateHz, rateFrom }: FileReading): string {
  if (rateHz === undefined) return "unknown";
  return `${rateHz} Hz, ${rateFrom === "stated" ? "stated" : `from the ${rateFrom}`}`;
}

/** What a column was read as: "time", "force, left", "not used". */
export function roleWords({ role, limb }: FileReading["columns"][number]): string {
  if (role === "unused") return "not used";
  if (role === "time") return "time";
  return limb === undefined ? "force" : `force, ${limb === "both" ? "total" : limb}`;
}
