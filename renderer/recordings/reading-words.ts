import { c3dFormWords } from "../../core/recording/c3d/c3d-lines.ts";
import { decimalMarkWords, rowCountWords } from "../../core/recording/decimal-mark-words.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;
const counts = words.screens.counts;

/** The outcome of a file in a word. */
export function outcomeWords(outcome: RecordingView["outcome"]): string {
  switch (outcome) {
    case "understood":
      return prose.understood;
    case "asks":
      return prose.asksForSomething;
    case "refused":
      return prose.refused;
  }
}

/** How a file is written: "UTF-8 · 3 header lines · 200 rows kept, none left out", "Intel byte order, integers · 89 frames". */
export function formWords(reading: FileReading): string {
  if (reading.kind === "c3d") return `${c3dFormWords(reading)} · ${counts.frames(reading.frames)}`;
  const { encoding, delimiter, decimalMark, columns, headerLines, rowsKept, rowsDropped } = reading;
  const dialect = `${delimiter === "none" ? prose.oneColumn : delimiter}, ${decimalMarkWords(decimalMark, columns)}`;
  return `${encoding} · ${dialect} · ${counts.headerLines(headerLines)} · ${rowCountWords(rowsKept, rowsDropped)}`;
}

/** Where the unit comes from: "N, from the header"; "unknown" while nothing says it. */
export function unitWords({ forceUnit, forceUnitFrom }: FileReading): string {
  if (forceUnit === undefined) return prose.unknown;
  return `${forceUnit}, ${forceUnitFrom === "stated" ? prose.stated : prose.fromThe(forceUnitFrom)}`;
}

/** Where the rate comes from: "from line 3: Sampling rate: 1000 Hz", "stated"; "unknown" while nothing says it. */
export function rateWords(reading: FileReading): string {
  const { rateHz, rateFrom } = reading;
  if (rateHz === undefined) return prose.unknown;
  if (rateFrom === "stated") return prose.stated;
  return prose.from(
    reading.kind === "delimited" && reading.rateSource !== "" ? reading.rateSource : prose.the(rateFrom),
  );
}
