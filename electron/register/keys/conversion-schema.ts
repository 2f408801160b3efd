import { z } from "zod";
import type { SchemaType } from "../../../core/ground/schema-type.ts";
import { wrappedKeySchema } from "../passphrase-key.ts";

/** How far a conversion has come: a table, and the key of the last row that was written again. */
const placeSchema = z.strictObject({ table: z.int().min(0), after: z.array(z.union([z.string(), z.number()])).max(2) });

export type ConversionPlace = SchemaType<typeof placeSchema>;

const progress = { place: placeSchema, done: z.int().min(0), total: z.int().min(0) };

/**
 * A conversion on its way. In two of them the data key stands in the clear: while the register has no passphrase yet, or
 * has none any more; what it opens lies in the clear then, too.
 */
export const conversionSchema = z.discriminatedUnion("to", [
  /** From fields under the data key itself, as up to schema 3. */
  z.strictObject({ to: z.literal("layers"), earlierKey: z.base64(), ...progress }),
  /** From no passphrase to one. */
  z.strictObject({ to: z.literal("passphrase"), dataKey: z.base64(), protection: wrappedKeySchema, ...progress }),
  /** From a passphrase to none. */
  z.strictObject({ to: z.literal("plain"), dataKey: z.base64(), ...progress }),
]);

export type Conversion = SchemaType<typeof conversionSchema>;
