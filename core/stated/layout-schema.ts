import { z } from "zod";

const columnKey = z.union([z.int().min(1), z.string().min(1)]);

/** The run-time twin of `Layout`. Keys stand in the order of writing. */
export const layoutSchema = z.strictObject({
  schemaVersion: z.literal(1),
  name: z.string().min(1).max(200),
  shape: z.strictObject({
    delimiter: z.enum(["comma", "semicolon", "tab", "pipe", "spaces", "none"]),
    decimalMark: z.enum(["point", "comma"]),
    columns: z
      .array(z.strictObject({ name: z.string(), unit: z.string() }))
      .min(1)
      .readonly(),
    headerKeys: z.array(z.string()).readonly(),
  }),
  answers: z.strictObject({
    rateHz: z.number().positive().exactOptional(),
    unit: z.enum(["N", "kN", "kgf", "lbf"]).exactOptional(),
    decimalMark: z.enum(["point", "comma"]).exactOptional(),
    time: columnKey.exactOptional(),
    left: columnKey.exactOptional(),
    right: columnKey.exactOptional(),
    total: columnKey.exactOptional(),
    platesStated: z.boolean().exactOptional(),
    swapPlates: z.boolean().exactOptional(),
    resample: z.boolean().exactOptional(),
    resampleHz: z.number().positive().exactOptional(),
  }),
});

/**
 * The JSON Schema (draft 2020-12) published beside this file as `layout.schema.json`; a test holds the two together.
 * After a change here `node build/write-schemas.ts` writes the new file.
 */
export function layoutJsonSchema(): Record<string, unknown> {
  return {
    title: "layout",
    description: "What was said once about files of one shape: their columns, rate, unit and plates.",
    ...z.toJSONSchema(layoutSchema, { target: "draft-2020-12", io: "input" }),
  };
}
