import { z } from "zod";
import { eventNames } from "../ground/event-name.ts";
import type { SchemaType } from "../ground/schema-type.ts";

/** An event moved by hand: before/after data, kept to 0.1 ms. */
export const eventEditSchema = z.strictObject({
  name: z.enum(eventNames),
  /** Of repeated hops, from 1. */
  contactIndex: z.int().min(1).exactOptional(),
  /** Seconds from the first sample. */
  time: z.number().min(0),
});

export type EventEdit = SchemaType<typeof eventEditSchema>;
