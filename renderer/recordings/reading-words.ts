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

/** "semicolon, decimal comma". */
export function dialectWords({ delimiter, decimalMark }: TableReading): string {
  const separator = delimiter === "none" ? "one column" : delimiter;
  return `${separator}, decimal ${decimalMark}`;
}

/** "2 force columns, left and right". */
export function platesWords({ columns }: TableReading): string {
  const forces = columns.filter((column) => column.role === "force");
  if (forces.length === 0) return "no force";
  const limbs = forces.flatMap((column) => column.limb ?? []);
  const names = limbs.length === 0 ? "" : `: ${limbs.map((limb) => (limb === "both" ? "total" : limb)).join(", ")}`;
  return `${forces.length === 1 ? "1 column" : `${forces.length} columns`}${names}`;
}

export function rateWords({ rateHz, rateFrom }: TableReading): string {
  return rateHz === undefined
    ? "unknown"
    : `${rateHz} Hz, ${rateFrom === "stated" ? "stated" : "from the time column"}`;
}

export function unitWords({ forceUnit, forceUnitFrom }: TableReading): string {
  return forceUnit === undefined
    ? "unknown"
    : `${forceUnit}, ${forceUnitFrom === "stated" ? "stated" : "from the header"}`;
}

/** What a column was read as: "time", "force, left", "not used". */
export function roleWords({ role, limb }: ColumnReading): string {
  if (role === "unused") return "not used";
  if (role === "time") return "time";
  return limb === undefined ? "force" : `force, ${limb === "both" ? "total" : limb}`;
}
