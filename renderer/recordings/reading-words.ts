import type { ColumnReading, TableReading } from "../../core/recording/request.ts";
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

/** "semicolon, decimal comma · two plates: left, right · N, from the header · 1000 Hz, from the time column". */
export function readingWords(reading: TableReading): string {
  return [dialectWords(reading), forceWords(reading), unitWords(reading), rateWords(reading)].join(" · ");
}

function dialectWords({ delimiter, decimalMark }: TableReading): string {
  return `${delimiter === "none" ? "one column" : delimiter}, decimal ${decimalMark}`;
}

function forceWords({ columns }: TableReading): string {
  const forces = columns.filter((column) => column.role === "force");
  if (forces.length === 0) return "no force column";
  const limbs = forces.flatMap((column) => column.limb ?? []).map((limb) => (limb === "both" ? "total" : limb));
  const plates = forces.length === 1 ? "one plate" : "two plates";
  return limbs.length === 0 ? plates : `${plates}: ${limbs.join(", ")}`;
}

function unitWords({ forceUnit, forceUnitFrom }: TableReading): string {
  if (forceUnit === undefined) return "unit unknown";
  return `${forceUnit}, ${forceUnitFrom === "stated" ? "stated" : "from the header"}`;
}

function rateWords({ rateHz, rateFrom }: TableReading): string {
  if (rateHz === undefined) return "rate unknown";
  return `${rateHz} Hz, ${rateFrom === "stated" ? "stated" : "from the time column"}`;
}

/** What a column was read as: "time", "force, left", "not used". */
export function roleWords({ role, limb }: ColumnReading): string {
  if (role === "unused") return "not used";
  if (role === "time") return "time";
  return limb === undefined ? "force" : `force, ${limb === "both" ? "total" : limb}`;
}
