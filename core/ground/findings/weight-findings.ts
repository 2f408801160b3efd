/** The figures of what is found in `core/weight`. */
export type WeightFindings = Readonly<Record<never, never>>;
