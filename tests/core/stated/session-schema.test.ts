import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import published from "../../../core/stated/session.schema.json" with { type: "json" };
import type { SessionDescription } from "../../../core/stated/session.ts";
import { sessionJsonSchema, type sessionSchema } from "../../../core/stated/session-schema.ts";

describe("the schema of session.json", () => {
  it("is published as the reader uses it", () => {
    expect(sessionJsonSchema()).toEqual(published);
  });

  it("accepts and refuses the same documents when another validator reads it", () => {
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(sessionJsonSchema());
    expect(validate({ involved: "right", pain: 2, files: [{ file: "a.csv", limb: "both" }] })).toBe(true);
    expect(validate({ involved: "middle" })).toBe(false);
    expect(validate({ pain: 11 })).toBe(false);
    expect(validate({ files: [{ limb: "left" }] })).toBe(false);
    expect(validate({ invovled: "right" })).toBe(false);
  });

  it("holds the same entries as the type of the description", () => {
    // Either assignment stops compiling when schema and type part.
    const fromSchema = (read: z.output<typeof sessionSchema>): SessionDescription => read;
    const toSchema = (description: SessionDescription): z.output<typeof sessionSchema> => description;
    expect(toSchema(fromSchema({ pain: 2 }))).toEqual({ pain: 2 });
  });
});
