import { deflateSync } from "node:zlib";
import { recordKinds } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { ByteSearch } from "./byte-search.ts";
import type { SearchedValues } from "./searched-values.ts";

/**
 * Which of the patterns that were found stand in what the register rightly goes on holding: records of other people,
 * what the journal says of them, and their recordings. Pattern by pattern, because recordings of one device share their
 * heads without being the same.
 */
export function sharedPatterns(
  register: Register,
  { patterns, kinds }: SearchedValues,
  found: ReadonlySet<number>,
): ReadonlySet<number> {
  if (found.size === 0) return new Set();
  const places = [...found];
  const search = new ByteSearch(places.flatMap((place) => patterns[place] ?? []));
  const standing = new Set<number>();
  const { store, journal } = register.contents;
  const lookInto = (content: unknown) => search.find(Buffer.from(JSON.stringify(content)), standing);
  for (const kind of recordKinds) {
    for (const { content } of store.readSound(kind, () => undefined)) lookInto(content);
  }
  // Nothing is gathered: each content is looked at as it passes.
  journal.readChangesOf((change) => {
    lookInto(change);
    return false;
  });
  const hasRecordings = places.some((place) => kinds[patterns[place]?.value ?? 0] === "recording");
  for (const recording of hasRecordings ? store.readSound("recordings", () => undefined) : []) {
    const bytes = store.intactBytes(recording);
    if (bytes === undefined) continue;
    search.find(bytes, standing);
    search.find(deflateSync(bytes), standing);
  }
  return new Set([...standing].flatMap((at) => places[at] ?? []));
}
