import type { NamedColumn, NamedTimeUnit, StatementSource, UnitlessRate, WrittenLine } from "./file-parts.ts";

interface RateUnknown {
  /** What the header gives without a unit. */
  readonly header?: UnitlessRate;
}

interface RateOutside {
  readonly rateHz: number;
  readonly leastHz: number;
  readonly mostHz: number;
}

interface AgainstColumn {
  readonly rateHz: number;
  readonly source: StatementSource;
  readonly columnHz: number;
}

interface AgainstHeader {
  readonly rateHz: number;
  readonly line: WrittenLine;
  readonly usedHz: number;
  readonly usedFrom: "time column" | "stated" | "header";
}

/** A step of the stamps and how many more are like it. */
interface Step {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly others: number;
}

/** The figures of what is found about the time base of a table. */
export interface TimeFindings {
  readonly "rate-missing/no-time-column": RateUnknown;
  readonly "rate-missing/samples-counted": RateUnknown;
  readonly "rate-missing/unit-not-said": RateUnknown;
  readonly "rate-missing/unit-unknown": RateUnknown & { readonly written: string };
  readonly "rate-contradicts/stated-outside": RateOutside;
  readonly "rate-contradicts/wanted-outside": RateOutside;
  readonly "rate-contradicts/header-outside": RateOutside & { readonly source: StatementSource };
  /** The time column in its written unit, and what the other units would make of it. */
  readonly "rate-contradicts/time-unit": RateOutside & {
    readonly unit: NamedTimeUnit;
    readonly readings: readonly { readonly unit: NamedTimeUnit; readonly rateHz: number }[];
  };
  readonly "rate-contradicts/time-column": AgainstColumn;
  readonly "rate-contradicts/time-column-used": AgainstColumn;
  readonly "rate-contradicts/header": AgainstHeader;
  readonly "rate-contradicts/header-not-used": AgainstHeader;
  readonly "rate-contradicts/unitless": {
    readonly number: number;
    readonly line: WrittenLine;
    readonly usedHz: number;
  };
  readonly "rate-low/weight-alone": { readonly rateHz: number; readonly leastHz: number };
  readonly "rate-low/less-accurate": { readonly rateHz: number; readonly wantedHz: number };
  readonly resampled: { readonly fromHz: number; readonly toHz: number; readonly wereUneven: boolean };

  readonly "time-uneven/backwards": Step;
  readonly "gap/stamps": Step;
  readonly "gap/counter": Step & { readonly counter: NamedColumn };
  readonly "time-uneven/steps": { readonly line: number; readonly others: number; readonly isResampled: boolean };
  readonly "time-uneven/no-even-base": {
    readonly line: number;
    readonly samples: number;
    readonly isResampled: boolean;
  };
  readonly "time-uneven/too-coarse": { readonly resolution: number };
  readonly "time-uneven/coarse": {
    readonly resolution: number;
    readonly unit: NamedTimeUnit;
    readonly rateHz: number;
  };
  readonly "time-uneven/no-rate-explains": { readonly resolution: number; readonly unit: NamedTimeUnit };
  readonly "time-uneven/not-rising": Readonly<Record<never, never>>;
}
