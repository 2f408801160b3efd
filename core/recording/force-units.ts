/** Units a force column may be in. Volts are refused: without a scale they say nothing. */
export const forceUnits = ["N", "kN", "kgf", "lbf"] as const;

export type ForceUnit = (typeof forceUnits)[number];

/** Units that need the body mass to become newtons: body weights, per cent of it, newtons a kilogram. */
export const massUnits = ["BW", "%BW", "N/kg"] as const;

/** What a force column may be in. */
export type ForceColumnUnit = ForceUnit | (typeof massUnits)[number];

/** Newtons in one of each unit, exact by definition (kgf: CGPM 1901; lbf: 0.45359237 kg × 9.80665 m/s²). */
const newtonsPerUnit: Readonly<Record<ForceUnit, number>> = {
  N: 1,
  kN: 1000,
  kgf: 9.80665,
  lbf: 4.4482216152605,
};

/** Newtons in one of a unit; undefined where it needs a body mass and none is known. */
export function newtonsIn(unit: ForceColumnUnit, massKg: number | undefined, gravity: number): number | undefined {
  if (!needsMass(unit)) return newtonsPerUnit[unit];
  if (massKg === undefined) return undefined;
  return unit === "N/kg" ? massKg : (massKg * gravity) / (unit === "BW" ? 1 : 100);
}

/** True for a unit that says nothing in newtons without the athlete's mass. */
export function needsMass(unit: ForceColumnUnit): unit is (typeof massUnits)[number] {
  return massUnits.some((each) => each === unit);
}

const spellings: Readonly<Record<string, ForceColumnUnit>> = {
  n: "N",
  newton: "N",
  newtons: "N",
  kn: "kN",
  kilonewton: "kN",
  kilonewtons: "kN",
  kgf: "kgf",
  kp: "kgf",
  kilopond: "kgf",
  "kg-force": "kgf",
  lbf: "lbf",
  "lb-force": "lbf",
  bw: "BW",
  xbw: "BW",
  "x bw": "BW",
  "times bw": "BW",
  bodyweight: "BW",
  bodyweights: "BW",
  "body weight": "BW",
  "body weights": "BW",
  "%bw": "%BW",
  "% bw": "%BW",
  "% body weight": "%BW",
  "n/kg": "N/kg",
  "n/bm": "N/kg",
  "n·kg⁻¹": "N/kg",
  "n.kg-1": "N/kg",
  "n kg-1": "N/kg",
};

/** The force unit a header means, or undefined where it is none. */
export function forceUnitOf(text: string): ForceColumnUnit | undefined {
  const unit = text.trim().toLowerCase();
  return Object.hasOwn(spellings, unit) ? spellings[unit] : undefined;
}

/** True for voltages: without a scale they say nothing about force. */
export function isVoltage(text: string): boolean {
  return /^(?:m|µ|μ|u)?(?:v|volts?)$/i.test(text.trim());
}

/** True for a unit that belongs to another quantity, so that its column cannot be force or time. */
export function isOtherQuantity(text: string): boolean {
  return /^(?:mm|cm|m|m\/s|m\/s2|m\/s²|m\/s\^2|n\.?m|n·m|nm|n\*m|w|w\/kg|hz|deg|°|deg\/s|rad|j|°c|n·?\.?s|n\/s|%)$/i.test(
    text.trim(),
  );
}
