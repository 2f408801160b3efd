/** The figures of what is found in `core/bytes`. */
export type BytesFindings = Readonly<Record<never, never>>;
