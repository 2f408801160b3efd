/** The figures of what is found in `core/sides`. */
export type SidesFindings = Readonly<Record<never, never>>;
