import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";

/** A column of a table, by its position from 1 or by its own name. */
export const columnKeySchema = z.union([z.int().min(1), z.string().min(1)]);

export type ColumnKey = SchemaType<typeof columnKeySchema>;
