/** The figures of what is found in `core/trial`. */
export type TrialFindings = Readonly<Record<never, never>>;
