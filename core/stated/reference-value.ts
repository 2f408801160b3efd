import { z } from "zod";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { SchemaType } from "../ground/schema-type.ts";
import { publishedUnits } from "../ground/units.ts";
import { dropHeight, isoDate, legs, side, testKind, text } from "./schema-parts.ts";

/** Completes "… is expected". */
const expectedKnownMeasure = "a measure this version knows, in the unit of that measure";

/** A value from before the injury or the operation, entered by a person. */
export const referenceValueSchema = z
  .strictObject({
    test: testKind,
    legs,
    measure: text,
    /** The box the value is from; a value of a test from a box counts only for its own box. */
    dropHeightMetres: dropHeight.exactOptional(),
    side,
    value: z.number().positive(),
    unit: z.enum(publishedUnits),
    date: isoDate,
    origin: z.enum(["pre-injury", "pre-operative"]),
  })
  .refine(
    (entry) => measureCatalogue.some((measure) => measure.id === entry.measure && measure.unit === entry.unit),
    expectedKnownMeasure,
  );

export type ReferenceValue = SchemaType<typeof referenceValueSchema>;
