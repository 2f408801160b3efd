import type { NamedColumn, StatementSource, WrittenLine } from "../../ground/findings/file-parts.ts";

/** "1000 Hz", to seven digits. */
export function hertz(rateHz: number): string {
  return `${Number(rateHz.toPrecision(7))} Hz`;
}

/** "3 (Fz right)". */
export function columnInWords({ position, name }: NamedColumn): string {
  return name === "" ? `${position}` : `${position} (${name})`;
}

/** A sentence names this many columns; of more it gives the number. No setting: it shortens a sentence. */
const mostNamed = 12;

/** "column 2 (Fz1), column 3 (Fz2)". */
export function columnsInWords(columns: readonly NamedColumn[]): string {
  const named = columns.slice(0, columns.length > mostNamed ? mostNamed - 1 : mostNamed);
  const labels = named.map((column) => `column ${columnInWords(column)}`).join(", ");
  return named.length < columns.length ? `${labels} and ${columns.length - named.length} more` : labels;
}

/** "line 3: Sampling rate: 1000 Hz". */
export function lineInWords({ line, written }: WrittenLine): string {
  return `line ${line}: ${written.length > 80 ? `${written.slice(0, 80)}…` : written}`;
}

/** "stated", "by the layout "Lab A"", "line 3: Sampling rate: 1000 Hz". */
export function sourceInWords(source: StatementSource): string {
  if (source.from === "person") return "stated";
  return source.from === "layout" ? `by the layout "${source.name}"` : lineInWords(source);
}
