import type { Limb, Side } from "./limb.ts";
import type { TestKind } from "./test-kind.ts";

/** What can be stated about a file or its trials; each answer is one of them. */
export interface Statements {
  readonly test: TestKind;
  readonly limb: Limb;
  readonly leadingLeg: Side;
  readonly unit: "N" | "kN" | "kgf" | "lbf";
  readonly rateHz: number;
  readonly massKg: number;
  readonly dropHeightMetres: number;
  readonly decimalMark: "point" | "comma";
  /** Which column is what, each by its place from 1 or its name. */
  readonly columns: {
    readonly time?: number | string;
    readonly left?: number | string;
    readonly right?: number | string;
    readonly total?: number | string;
  };
  readonly swapPlates: true;
  readonly resample: true;
  readonly resampleHz: number;
  /** The trial is kept in means although its weight differs. */
  readonly kept: true;
  /** The recording is left out of the session. */
  readonly leftOut: true;
}

export type StatementName = keyof Statements;

/** One statement that would settle a finding, or the name of one whose value only a person knows. */
export type Answer =
  | { readonly [Name in StatementName]: { readonly [Key in Name]: Statements[Name] } }[StatementName]
  | { readonly asks: StatementName };
