import type { ForceUnit } from "../session.ts";

/** Newtons in one of each unit, exact by definition (kgf: CGPM 1901; lbf: 0.45359237 kg × 9.80665 m/s²). */
export const newtonsPerUnit: Readonly<Record<ForceUnit, number>> = {
  N: 1,
  kN: 1000,
  kgf: 9.80665,
  lbf: 4.4482216152605,
};

const spellings: Readonly<Record<string, ForceUnit>> = {
  n: "N",
  newton: "N",
  newtons: "N",
  kn: "kN",
  kilonewton: "kN",
  kilonewtons: "kN",
  kgf: "kgf",
  kp: "kgf",
  kilopond: "kgf",
  lbf: "lbf",
};

/** The force unit a header means, or undefined where it is none. */
export function forceUnitOf(text: string): ForceUnit | undefined {
  return spellings[text.trim().toLowerCase()];
}

/** True for voltages: without a scale they say nothing about force. */
export function isVoltage(text: string): boolean {
  return /^(?:m|µ|u)?(?:v|volts?)$/i.test(text.trim());
}

/** True for a unit that belongs to another quantity, so that its column cannot be force or time. */
export function isOtherQuantity(text: string): boolean {
  return /^(?:mm|cm|m|m\/s|m\/s2|m\/s²|m\/s\^2|n\.?m|n·m|nm|n\*m|w|w\/kg|hz|deg|°|deg\/s|rad|j|°c)$/i.test(text.trim());
}
