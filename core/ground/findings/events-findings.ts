import type { TestKind } from "../test-kind.ts";

/** Where quiet standing lies. */
type QuietPlace = "before the jump" | "after the landing";

/** The figures of what is found in `core/events`. */
export interface EventsFindings {
  /** Something else carried a part of the athlete who stood before the jump. */
  readonly "held-while-weighed": {
    readonly test: TestKind;
    readonly beforeNewtons: number;
    readonly afterNewtons: number;
    /** Height of the jump by the standing before it, and by its flight. */
    readonly heightByWeightMetres: number;
    readonly heightByFlightMetres: number;
  };
  /** Too short to decide on the trial. */
  readonly "weighing-short/too-short": {
    readonly quiet: QuietPlace;
    readonly seconds: number;
    readonly uncertaintyFraction: number;
  };
  readonly "weighing-short/short": {
    readonly quiet: QuietPlace;
    readonly seconds: number;
    readonly wantedSeconds: number;
    readonly uncertaintyFraction: number;
  };
  readonly "weighing-restless": {
    readonly test: TestKind;
    readonly quiet: QuietPlace;
    /** Standard deviation of force. */
    readonly deviationNewtons: number;
  };
}
