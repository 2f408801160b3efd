/** The figures of what is found in `core/events`. */
export type EventsFindings = Readonly<Record<never, never>>;
