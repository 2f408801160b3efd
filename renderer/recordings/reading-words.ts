import { countOf } from "../../core/ground/plain-words.ts";
import { c3dFormWords } from "../../core/recording/c3d/c3d-lines.ts";
import { decimalMarkWords, rowCountWords } from "../../core/recording/decimal-mark-words.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";

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

/** How a file is written: "UTF-8 · 3 header lines · 200 rows kept, none left out", "Intel byte order, integers · 89 frames". */
export function formWords(reading: FileReading): string {
  if (reading.kind === "c3d") return `${c3dFormWords(reading)} · ${countOf(reading.frames, "frame")}`;
  const { encoding, delimiter, decimalMark, columns, headerLines, rowsKept, rowsDropped } = reading;
  const dialect = `${delimiter === "none" ? "one column" : delimiter}, ${decimalMarkWords(decimalMark, columns)}`;
  return `${encoding} · ${dialect} · ${countOf(headerLines, "header line")} · ${rowCountWords(rowsKept, rowsDropped)}`;
}

/** Where the unit comes from: "N, from the header"; "unknown" while nothing says it. */
export function unitWords({ forceUnit, forceUnitFrom }: FileReading): string {
  if (forceUnit === undefined) return "unknown";
  return `${forceUnit}, ${forceUnitFrom === "stated" ? "stated" : `from the ${forceUnitFrom}`}`;
}

/** Where the rate comes from: "from line 3: Sampling rate: 1000 Hz", "stated"; "unknown" while nothing says it. */
export function rateWords(reading: FileReading): string {
  const { rateHz, rateFrom } = reading;
  if (rateHz === undefined) return "unknown";
  if (rateFrom === "stated") return "stated";
  return `from ${reading.kind === "delimited" && reading.rateSource !== "" ? reading.rateSource : `the ${rateFrom}`}`;
}
