import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { side, text } from "./schema-parts.ts";

/** The foot that stood on one force column, as the tester says. */
export const statedPlateSchema = z.strictObject({ column: text, foot: side });

export type StatedPlate = SchemaType<typeof statedPlateSchema>;
