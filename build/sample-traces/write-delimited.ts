import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";

/** How a table of samples is written as text. */
export interface Dialect {
  readonly delimiter: "," | ";" | "\t" | " ";
  readonly decimalMark: "." | ",";
  /** Absent: no time column. */
  readonly time?: "s" | "ms";
  /** Absent: no header line. `plain`: names without units. */
  readonly header?: "units" | "plain";
  readonly unit: "N" | "kN";
  readonly lineEnd: "\n" | "\r\n";
  /** Lines ahead of the header. */
  readonly preamble?: readonly string[];
}

export const commaDialect: Dialect = {
  delimiter: ",",
  decimalMark: ".",
  time: "s",
  header: "units",
  unit: "N",
  lineEnd: "\n",
};

/** Writes a simulated recording: newtons with one decimal, kilonewtons with four, time to the sample. */
export function writeDelimited(recording: SimulatedRecording, dialect: Dialect): string {
  const forceDecimals = dialect.unit === "kN" ? 4 : 1;
  const forceScale = dialect.unit === "kN" ? 0.001 : 1;
  const timeScale = dialect.time === "ms" ? 1000 : 1;
  const timeDecimals = Number.isInteger((timeScale * 1000) / recording.rateHz) ? (dialect.time === "ms" ? 0 : 3) : 4;
  const number = (value: number, decimals: number): string => {
    // A tiny negative force would otherwise be written as a minus zero.
    const text = (Math.round(value * 10 ** decimals) / 10 ** decimals + 0).toFixed(decimals);
    return dialect.decimalMark === "," ? text.replace(".", ",") : text;
  };
  const lines: string[] = [...(dialect.preamble ?? [])];
  if (dialect.header !== undefined) {
    const named = (name: string, unit: string): string => (dialect.header === "units" ? `${name} (${unit})` : name);
    const time = dialect.time === undefined ? [] : [named("time", dialect.time)];
    lines.push([...time, ...recording.plates.map((plate) => named(plate.name, dialect.unit))].join(dialect.delimiter));
  }
  for (let index = 0; index < recording.sampleCount; index++) {
    const time = dialect.time === undefined ? [] : [number((index / recording.rateHz) * timeScale, timeDecimals)];
    const forces = recording.plates.map((plate) => number((plate.force[index] ?? 0) * forceScale, forceDecimals));
    lines.push([...time, ...forces].join(dialect.delimiter));
  }
  return lines.join(dialect.lineEnd) + dialect.lineEnd;
}
