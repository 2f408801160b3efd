import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import type { ForceUnit } from "../force-units.ts";
import { isOtherQuantity, isVoltage } from "../force-units.ts";
import type { ForcePlatform } from "./force-platform.ts";

/** The unit of a platform's force and how it is known. */
export interface PlatformUnit {
  readonly unit?: ForceUnit;
  /** `format`: the file names no unit, and newtons are what the format's platforms are scaled to. */
  readonly from: "header" | "stated" | "format" | "unknown";
  /** As the file writes it at the vertical channel; "" where it is silent. */
  readonly written: string;
}

/** Newtons in one of each unit, exact by definition (kgf: CGPM 1901; lbf: 0.45359237 kg × 9.80665 m/s²). */
export const newtonsPerForceUnit: Readonly<Record<ForceUnit, number>> = {
  N: 1,
  kN: 1000,
  kgf: 9.80665,
  lbf: 4.4482216152605,
};

const spellings: Readonly<Record<string, ForceUnit>> = {
  n: "N",
  nt: "N",
  newton: "N",
  newtons: "N",
  kn: "kN",
  kilonewton: "kN",
  kgf: "kgf",
  kp: "kgf",
  lbf: "lbf",
};

/** Inputs that carry the vertical force, by type. */
const verticalInputs: ReadonlyMap<number, readonly number[]> = new Map([
  [1, [2]],
  [2, [2]],
  [3, [4, 5, 6, 7]],
]);

/**
 * The unit of a platform's vertical force. A calibration matrix gives newtons whatever its channels are called; the
 * channels of other types carry a label, which a person's word outranks because labels are often wrong.
 */
export function platformUnit(file: C3dFile, platform: ForcePlatform, stated: ForceUnit | undefined): PlatformUnit {
  const inputs = verticalInputs.get(platform.type ?? 0);
  const labels = (inputs ?? []).map((input) => file.channels[(platform.channels[input] ?? 0) - 1]?.unit ?? "");
  const written = [...new Set(labels)].join(", ");
  if (stated !== undefined) return { unit: stated, from: "stated", written };
  if (inputs === undefined) return { unit: "N", from: "format", written: "" };
  const units = new Set(labels.map((label) => spellings[label.toLowerCase()]));
  const [unit] = units;
  if (units.size === 1 && unit !== undefined) return { unit, from: "header", written };
  if (labels.some((label) => isVoltage(label) || isOtherQuantity(label)) || units.size > 1) {
    return { from: "unknown", written };
  }
  return { unit: "N", from: "format", written };
}
