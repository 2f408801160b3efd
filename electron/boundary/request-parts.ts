import { z } from "zod";
import { isInsidePath } from "../../core/stated/file-entry.ts";
import { sessionSchema } from "../../core/stated/session.ts";
import { settledFields } from "../refusals/settled-fields.ts";

/** What requests are made of: as in the documents, but never longer or larger than a screen has reason to send. */

/** One line of text a person typed: nothing that could hide or break a line. */
export const line = (most: number) =>
  z
    .string()
    .max(most)
    .regex(/^\P{Cc}*$/u, "must be one line of text");

export const folder = line(1024);
export const file = line(1024).min(1);
export const files = z.array(file).min(1).max(10_000);
/** Of a file, from 1. */
export const trial = z.int().min(1).max(10_000);
export const reason = line(500).min(1);

/** A relative path with forward slashes; only ever a key in memory, yet `..` and the like have no business in it. */
export const relativePath = file.refine(isInsidePath, "must be a relative path with forward slashes");

/** A place on this computer. */
export const place = line(4096).min(1);

/** Names a record of the register. */
export const id = z.uuid();

const bytes: z.ZodType<Uint8Array> = z.instanceof(Uint8Array);

/** The longest line a person types, in bytes of UTF-8. */
const passphraseByteLimit = 4000;

/** A passphrase, as bytes that can be overwritten. */
export const passphrase = bytes.refine(
  ({ byteLength }) => byteLength >= 1 && byteLength <= passphraseByteLimit,
  `must have 1 to ${passphraseByteLimit} bytes`,
);

/** Bytes of a file, at most so many. */
export const bytesUpTo = (limit: number, words: string) =>
  bytes.refine(({ byteLength }) => byteLength <= limit, `must not be larger than ${words}`);

/** What the screen showed of the session when the change began, and what the person chose since. */
export const started = { before: sessionSchema.exactOptional(), settled: settledFields.exactOptional() };
