import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { publishedSchemas } from "../../../core/stated/published-schemas.ts";
import published from "../../../core/stated/session.schema.json" with { type: "json" };
import type { SessionDescription, sessionSchema } from "../../../core/stated/session.ts";

describe("the schema of session.json", () => {
  it("is published as the reader uses it", () => {
    expect(publishedSchemas["session.schema.json"]).toEqual(published);
  });

  it("accepts and refuses the same documents when another validator reads it", () => {
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(
      publishedSchemas["session.schema.json"],
    );
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

  it("gives a type of which nothing can be changed in place, at any depth", () => {
    // Each line stops compiling when its directive is no longer needed.
    const change = (description: SessionDescription): void => {
      // @ts-expect-error nothing of a description is changed in place
      description.pain = 3;
      // @ts-expect-error nor of what it holds
      if (description.athlete !== undefined) description.athlete.code = "GH-07";
      // @ts-expect-error nor of its lists
      description.files?.[0]?.events?.push({ name: "takeoff", time: 1 });
    };
    const description: SessionDescription = {
      pain: 2,
      athlete: { code: "GH-01" },
      files: [{ file: "a.csv", events: [] }],
    };
    expect(() => change(structuredClone(description))).not.toThrow();
  });
});
