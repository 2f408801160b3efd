/** The figures of what is found in `core/stated`. */
export type StatedFindings = Readonly<Record<never, never>>;
