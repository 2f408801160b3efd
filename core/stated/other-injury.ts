import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { bodyParts } from "./body-parts.ts";
import { isoDate, side, text } from "./schema-parts.ts";

/** An injury or operation that does not make its side the involved one: a caution on that limb. */
export const otherInjurySchema = z.strictObject({
  side,
  bodyPart: z.enum(bodyParts),
  /** What it is, in words ("sprain of the outer ligaments"). */
  what: text,
  date: isoDate.exactOptional(),
});

export type OtherInjury = SchemaType<typeof otherInjurySchema>;
