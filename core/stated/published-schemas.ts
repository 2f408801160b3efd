import { z } from "zod";
import { layoutSchema } from "./layout.ts";
import { sessionSchema } from "./session.ts";

/**
 * The JSON Schemas (draft 2020-12) published beside this file, by their names; `node build/write-schemas.ts` writes them,
 * and a test holds them.
 */
export const publishedSchemas = {
  "session.schema.json": {
    title: "session.json",
    description: "What was said about one session of recordings: athlete, sides, gate, references, and each file.",
    ...z.toJSONSchema(sessionSchema, { target: "draft-2020-12", io: "input" }),
  },
  "layout.schema.json": {
    title: "layout",
    description: "What was said once about files of one shape: their columns, rate, unit and plates.",
    ...z.toJSONSchema(layoutSchema, { target: "draft-2020-12", io: "input" }),
  },
} as const;
