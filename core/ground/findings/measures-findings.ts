/** The figures of what is found in `core/measures`. */
export type MeasureFindings = Readonly<Record<never, never>>;
