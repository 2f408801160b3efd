/** Units as documents carry them, UCUM codes (ucum.org): a dot for products, a single slash; a count is a pure number. */
export const publishedUnits = [
  "N",
  "kg",
  "m/s",
  "m",
  "s",
  "N.s",
  "W",
  "N/s",
  "N/m",
  "N/kg",
  "W/kg",
  "N.s/kg",
  "1",
] as const;

export type PublishedUnit = (typeof publishedUnits)[number];

/** The same inside the core, where everything is SI; `{count}` is the pure number of things counted. */
export type UcumUnit = PublishedUnit | "{count}";

/** The unit of a value in a result document. */
export function publishedUnit(unit: UcumUnit): PublishedUnit {
  return unit === "{count}" ? "1" : unit;
}

/** How a unit is shown to people: the factor on the SI value and the printed symbol. */
export interface DisplayUnit {
  readonly symbol: string;
  readonly factor: number;
}

const symbols: Readonly<Record<UcumUnit, string>> = {
  N: "N",
  kg: "kg",
  "m/s": "m/s",
  m: "m",
  s: "s",
  "N.s": "N·s",
  W: "W",
  "N/s": "N/s",
  "N/m": "N/m",
  "N/kg": "N/kg",
  "W/kg": "W/kg",
  "N.s/kg": "N·s/kg",
  "1": "",
  "{count}": "",
};

/** Screens show lengths in centimetres and every other quantity in its SI unit. */
export function displayUnit(unit: UcumUnit): DisplayUnit {
  return unit === "m" ? { symbol: "cm", factor: 100 } : { symbol: symbols[unit], factor: 1 };
}
