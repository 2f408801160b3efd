import type { EventName } from "../ground/event-name.ts";

/** An event moved by hand: before/after data, kept to 0.1 ms. */

export interface EventEdit {
  readonly name: EventName;
  readonly contactIndex?: number;
  /** Seconds from the first sample. */
  readonly time: number;
}
