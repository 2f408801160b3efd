import { z } from "zod";
import { delimiters } from "../bytes/fields.ts";
import { decimalMarks } from "../bytes/number-text.ts";
import type { SchemaType } from "../ground/schema-type.ts";

/** What files of one kind have in common, whatever was measured in them. Keys stand in the order of writing. */
export const layoutShapeSchema = z.strictObject({
  delimiter: z.enum(delimiters),
  decimalMark: z.enum(decimalMarks),
  /** In order of the file, as written; "" where it names nothing. */
  columns: z
    .array(z.strictObject({ name: z.string(), unit: z.string() }))
    .min(1)
    .readonly(),
  /** Keys of the lines above the column names, in order, lower case. */
  headerKeys: z.array(z.string()).readonly(),
});

export type LayoutShape = SchemaType<typeof layoutShapeSchema>;
