import type { JsonLimits } from "../../core/bytes/json-bounds.ts";

const megabyte = 1024 * 1024;

/** `preferences.json`: one number and eight identifiers. */
export const preferencesLimits: JsonLimits = { bytes: megabyte / 16, depth: 8, elements: 1000, textBytes: 4096 };

/** The beginning of a sealed file: how its key follows from the passphrase. */
export const sealHeaderLimits: JsonLimits = { bytes: 4096, depth: 4, elements: 50, textBytes: 1024 };

/**
 * One row of a register, which may come from a backup made elsewhere: everything that one record says, before and after
 * a change. A session says what its `session.json` may say, of at most 8 MB, and what was answered since.
 */
export const storedRowLimits: JsonLimits = {
  bytes: 64 * megabyte,
  depth: 64,
  elements: 1_000_000,
  textBytes: 16 * megabyte,
};

/** The text of a request, without the recording behind it: what is stated of a session of 5,000 recordings at once is less. */
export const requestLimits: JsonLimits = {
  bytes: 16 * megabyte,
  depth: 64,
  elements: 200_000,
  textBytes: megabyte,
};
