import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";

/** One request of the boundary: what it must look like, and the type of what is replied. */
export interface HostRequest<Schema extends z.ZodType, Reply> {
  /** Anything more, less or larger is refused before a handler sees it. */
  readonly schema: Schema;
  /** Never there; it carries the type alone, as replies come from our own code. */
  readonly reply?: Reply;
}

/** A request in the words of its map: `request(schema).replies<Reply>()`. */
export function request<Schema extends z.ZodType>(schema: Schema) {
  return { replies: <Reply>(): HostRequest<Schema, Reply> => ({ schema }) };
}

/** What the requests of a map ask with and are answered with, by their names. */
export type RequestTypes<Requests extends Readonly<Record<string, HostRequest<z.ZodType, unknown>>>> = {
  readonly [Name in keyof Requests]: {
    readonly request: SchemaType<Requests[Name]["schema"]>;
    readonly reply: NonNullable<Requests[Name]["reply"]>;
  };
};

/** A request that says nothing but its name. */
export const nothing = z.strictObject({}).readonly();
