import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { rememberedAnswersSchema } from "../recording/reading-statements.ts";
import { layoutShapeSchema } from "../recording/shape-schema.ts";

/** A saved layout: applied to every file of its shape and to no other. Keys stand in the order of writing. */
export const layoutSchema = z.strictObject({
  schemaVersion: z.literal(1),
  name: z.string().min(1).max(200),
  shape: layoutShapeSchema,
  answers: rememberedAnswersSchema,
});

export type Layout = SchemaType<typeof layoutSchema>;
