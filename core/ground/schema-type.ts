import type { z } from "zod";

/** A type of which nothing can be changed, at any depth; bytes stay what they are. */
export type DeepReadonly<Held> = Held extends Uint8Array
  ? Held
  : Held extends object
    ? { readonly [Part in keyof Held]: DeepReadonly<Held[Part]> }
    : Held;

/** What a document of a schema says; nothing of it is ever changed in place. */
export type SchemaType<Schema extends z.ZodType> = DeepReadonly<z.infer<Schema>>;
