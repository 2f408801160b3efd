import type { Limb } from "../../core/ground/limb.ts";
import { jumpRateHz, newtonsAt } from "./small-jump.ts";

/** One column to be written; cells in the plain form that `Number()` reads, in newtons as the writer makes them. */
export interface ZooColumn {
  readonly name: string;
  readonly cells: readonly string[];
  readonly role: "time" | "force" | "unused";
  readonly limb?: Limb;
  /** The unit a reader is expected to see. */
  readonly unit: string;
  /** Stands in a row of units under the names. */
  readonly unitBelow?: string;
  /** Stands in a row of plates above the names. */
  readonly nameAbove?: string;
  /** The value of a row's cell, where `Number()` does not read it. */
  readonly value?: (row: number) => number;
  /** Newtons of a value as written; upward positive. */
  readonly newtons?: (value: number) => number;
}

/** Lists one text a row. */
export function cellsOf(rows: number, cell: (row: number) => string): readonly string[] {
  return Array.from({ length: rows }, (_, row) => cell(row));
}

/** A value without a minus before a zero. */
export function written(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}

interface TimeOptions {
  readonly unit?: string;
  readonly decimals?: number;
  /** Units of the stamps in a second. */
  readonly perSecond?: number;
  readonly rateHz?: number;
  readonly unitBelow?: string;
  readonly nameAbove?: string;
}

/** Evenly rising stamps from zero. */
export function timeColumn(name: string, rows: number, options: TimeOptions = {}): ZooColumn {
  const { unit = "s", decimals = 3, perSecond = 1, rateHz = jumpRateHz, ...beside } = options;
  return {
    name,
    role: "time",
    unit,
    ...beside,
    cells: cellsOf(rows, (row) => written((row / rateHz) * perSecond, decimals)),
  };
}

interface ForceOptions {
  readonly unit?: string;
  readonly decimals?: number;
  /** Newtons in one unit. */
  readonly factor?: number;
  /** True: downward force is written as positive. */
  readonly isDownward?: boolean;
  /** Part of the limb's force that this column carries. */
  readonly share?: number;
  readonly unitBelow?: string;
  readonly nameAbove?: string;
  readonly role?: "force" | "unused";
}

/** A force of the simulated jump. */
export function forceColumn(name: string, limb: Limb, rows: number, options: ForceOptions = {}): ZooColumn {
  const { unit = "N", decimals = 2, factor = 1, isDownward = false, share = 1, role = "force", ...beside } = options;
  const sign = isDownward ? -1 : 1;
  return {
    name,
    role,
    ...(role === "force" ? { limb } : {}),
    unit,
    ...beside,
    cells: cellsOf(rows, (row) => written((sign * share * newtonsAt(limb, row)) / factor, decimals)),
    newtons: (value) => sign * (value * factor),
  };
}

/** A column that is not needed: a slow wave. */
export function otherColumn(name: string, rows: number, unit = "", middle = 20): ZooColumn {
  return {
    name,
    role: "unused",
    unit,
    cells: cellsOf(rows, (row) => written(middle + Math.sin(row / 9), 3)),
  };
}

/** Time, left and right: what most files hold. */
export function plainColumns(rows: number, names = ["time (s)", "left (N)", "right (N)"]): readonly ZooColumn[] {
  const [time = "", left = "", right = ""] = names;
  return [timeColumn(time, rows), forceColumn(left, "left", rows), forceColumn(right, "right", rows)];
}
