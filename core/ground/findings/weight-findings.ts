import type { StatementSource } from "./file-parts.ts";

/** Trials of one weight. */
interface WeightGroup {
  readonly trials: number;
  readonly massKg: number;
  /** Their recordings, each once. */
  readonly files: readonly string[];
}

/** The figures of what is found in `core/weight`. */
export interface WeightFindings {
  readonly "another-athlete": {
    /** The larger group first. */
    readonly groups: readonly [WeightGroup, WeightGroup];
    readonly differenceFraction: number;
    /** Which of the groups is held out of means; absent where both are. */
    readonly held?: 0 | 1;
  };
  readonly "weight-differs/entered": { readonly massKg: number; readonly enteredKg: number };
  readonly "weight-differs/header": {
    readonly massKg: number;
    readonly headerKg: number;
    /** Where the header says it. */
    readonly source: StatementSource;
  };
}
