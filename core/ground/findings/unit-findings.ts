import type { NamedForceUnit, StatementSource, WrittenLine } from "./file-parts.ts";

/** The figures of what is found about the unit and the sign of the forces of a table, and the mass behind them. */
export interface UnitFindings {
  readonly "mass-missing": Readonly<Record<never, never>>;
  readonly "unit-from-mass": { readonly massKg: number; readonly source: StatementSource };
  /** Columns without a unit of force, each with what is written as its unit; "" where nothing is. */
  readonly "unit-not-stated/columns": {
    readonly columns: readonly { readonly name: string; readonly unit: string }[];
  };
  readonly "unit-not-stated/voltage": { readonly name: string; readonly unit: string };
  readonly "unit-contradicts/column": {
    readonly name: string;
    readonly unit: string;
    readonly stated: NamedForceUnit;
  };
  readonly "unit-contradicts/line": {
    readonly unit: NamedForceUnit;
    readonly line: WrittenLine;
    readonly stated: NamedForceUnit;
  };
  readonly "unit-contradicts/column-and-line": {
    readonly name: string;
    readonly unit: string;
    readonly lineUnit: NamedForceUnit;
    readonly line: WrittenLine;
  };
  readonly "unit-contradicts/overruled": { readonly unit: NamedForceUnit; readonly stated: NamedForceUnit };
  /** The load of standing in the unit it is said to be in, and the units that would make it a person's. */
  readonly "weight-implausible/load": {
    readonly unit: NamedForceUnit;
    readonly isStated: boolean;
    readonly figure: number;
    readonly massKg: number;
    readonly likely: readonly { readonly unit: NamedForceUnit; readonly massKg: number }[];
    readonly mayBeVolts: boolean;
  };
  readonly "weight-implausible/mass": {
    readonly massKg: number;
    readonly source: StatementSource;
    readonly leastKg: number;
    readonly mostKg: number;
  };
  readonly "weight-differs/header": {
    readonly headerKg: number;
    readonly source: StatementSource;
    readonly massKg: number;
  };
  readonly "sign-turned/columns": { readonly names: readonly string[] };
}
