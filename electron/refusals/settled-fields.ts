import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";

/** What the person chose about a field; it holds only while the other's value is still the one that was shown. */
const settledField = z.strictObject({
  place: z.string().min(1).max(2000),
  /** The other's value as text that can be compared. */
  theirs: z.string().max(100_000),
  keep: z.enum(["mine", "theirs"]),
});

export type SettledField = SchemaType<typeof settledField>;

/** What a person chose about fields that were changed elsewhere, as it comes from a screen. */
export const settledFields = z.array(settledField).max(10_000);
