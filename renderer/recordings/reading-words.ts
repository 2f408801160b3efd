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

/** "semicolon, decimal comma · two plates: left, right · N · 1000 Hz". */
export function readingWords(reading: TableReading): string {
  const unit = reading.forceUnit ?? "unit unknown";
  const rate = reading.rateHz === undefined ? "rate unknown" : `${reading.rateHz} Hz`;
  return [dialectWords(reading), forceWords(reading), unit, rate].join(" · ");
}

/** Where unit and rate come from: "unit N, from the header · rate 1000 Hz, stated". */
export function originWords(reading: TableReading): string {
  return `unit ${unitWords(reading)} · rate ${rateWords(reading)}`;
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
  if (forceUnit === undefined) return "unknown";
  return `${forceUnit}, ${forceUnitFrom === "stated" ? "stated" : "from the header"}`;
}

function rateWords({ rateHz, rateFrom }: TableReading): string {
  if (rateHz === undefined) return "unknown";
  return `${rateHz} Hz, ${rateFrom === "stated" ? "stated" : "from the time column"}`;
}

/** What a column was read as: "time", "force, left", "not used". */
export function roleWords({ role, limb }: ColumnReading): string {
  if (role === "unused") return "not used";
  if (role === "time") return "time";
  return limb === undefined ? "force" : `force, ${limb === "both" ? "total" : limb}`;
}
