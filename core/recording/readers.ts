import { c3dReader } from "./c3d/c3d-reader.ts";
import type { Reader } from "./reader.ts";
import { tableReader } from "./table-reader.ts";

/** Whatever no reader knows as its own may still be text; the reader of tables then says why it is none. */
const fallback: Reader = tableReader;

/** Every reader, in the order in which they are asked; a new one stands before the reader of tables, which takes any bytes. */
export const readers: readonly Reader[] = [c3dReader, fallback];

/** The reader that takes these bytes. */
export function readerOf(bytes: Uint8Array): Reader {
  return readers.find(({ recognises }) => recognises(bytes)) ?? fallback;
}
