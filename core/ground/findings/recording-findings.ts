/** The figures of what is found in `core/recording`. */
export type RecordingFindings = Readonly<Record<never, never>>;
