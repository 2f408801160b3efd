/** How a criterion may stand; its word is each language's. */
export type Status =
  | "met"
  | "not-met"
  | "too-close-to-call"
  | "not-measured"
  | "not-applicable"
  | "no-reference"
  | "out-of-date"
  | "withheld-today";
