/** The figures of what is found in `core/session`. */
export interface SessionFindings {
  /** Body mass is far from the last session's although little time has passed. */
  readonly "mass-changed": {
    readonly massKg: number;
    readonly earlierKg: number;
    readonly earlierFrom: "entered" | "weighed";
    /** ISO date of the earlier session, and how many days before it was. */
    readonly earlierDate: string;
    readonly days: number;
  };
}
