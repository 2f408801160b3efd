import { type Finding, finding } from "../ground/finding.ts";
import type { Place } from "../ground/place.ts";
import type { TextField } from "./table.ts";

const words = (list: string): ReadonlySet<string> => new Set(list.split(" "));

// English, German, French, Spanish; lower case, without accents.
const countedThings = words(
  "sample samples row rows frame frames point points datapoints line lines abtastwerte messwerte datenpunkte zeilen " +
    "bilder abtastungen echantillons lignes trames images points mesures muestras filas cuadros fotogramas puntos",
);
const fillers = words(
  "number count no nr n num total of the data anzahl der gesamt zahl nombre total de d des numero el las los",
);

/** A fact that states how many rows the file was written with. */
interface StatedCount {
  readonly count: number;
  readonly field: TextField;
}

/** The facts that state a number of samples: "Samples: 5000", "Anzahl Abtastwerte = 5000", "nombre d'échantillons;5000". */
function statedCounts(fields: readonly TextField[]): StatedCount[] {
  return fields.flatMap((field) => {
    if (!isCount(field.key)) return [];
    const digits = /^"?(\d{1,3}(?:[.,'\u2019 \u00a0\u2009\u202f]\d{3})+|\d+)"?(?:\s*\p{L}+)?$/u.exec(
      field.value.trim(),
    );
    if (digits === null) return [];
    return [{ count: Number(digits[1]!.replace(/\D/g, "")), field }];
  });
}

/** Every word counts: "samples per second" and "frame rate" state no number of rows. */
function isCount(key: string): boolean {
  const parts = key
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((part) => part !== "");
  return (
    parts.some((part) => countedThings.has(part)) && parts.every((part) => countedThings.has(part) || fillers.has(part))
  );
}

/** Compares the rows with what the file says about their number; one statement that agrees settles it. */
export function countFindings(fields: readonly TextField[], rows: number): Finding[] {
  const stated = statedCounts(fields);
  const [first] = stated;
  if (first === undefined || stated.some(({ count }) => count === rows)) return [];
  const { count, field } = first;
  const figures = { line: field.line, key: field.key, value: field.value, count, rows };
  const place: Place = { at: "line", line: field.line };
  return rows < count
    ? [finding("truncated/rows-stated", "warning", figures, { place })]
    : [finding("rows-contradict", "warning", figures, { place })];
}
