import type { Side } from "../limb.ts";

/** Curves of one side on a common time axis. */
export interface SideCurves {
  readonly side: Side;
  /** One curve a trial, force in body weights; same length as the time axis. */
  readonly curves: readonly { readonly file: string; readonly trial: number; readonly values: Float64Array }[];
  /** Mean over the trials, body weights. */
  readonly mean: Float64Array;
  /** Standard deviation over the trials (n − 1), body weights; empty with fewer than two trials. */
  readonly standardDeviation: Float64Array;
}

/** Involved against uninvolved trials of one test, aligned at one event. */
export interface CurveOverlay {
  readonly alignedAt: "takeoff" | "onset";
  /** Seconds from the event. */
  readonly timeSeconds: Float64Array;
  readonly first: SideCurves;
  readonly second: SideCurves;
}
