import { ChangeConflict } from "./field-conflict.ts";
import type { SettledField } from "./settled-fields.ts";

/** What is stated, field by field. */
export type Fields = ReadonlyMap<string, unknown>;

/** Fields that get another value; `undefined` takes one away. */
export type FieldChanges = ReadonlyMap<string, unknown>;

/** What a form started from, what it wants, and what is stated now. */
export interface MergedSides {
  readonly from: Fields;
  readonly mine: Fields;
  readonly now: Fields;
}

/** Fields and their values in words. */
export interface FieldWords {
  readonly place: (place: string) => string;
  readonly value: (place: string, value: unknown) => string;
}

/**
 * What must be changed so that everything the form changed is stated, and nothing else.
 * @throws ChangeConflict where somebody else changed one of those fields to something else
 */
export function mergeFields(
  { from, mine, now }: MergedSides,
  words: FieldWords,
  settled: readonly SettledField[] = [],
): FieldChanges {
  const changes = new Map<string, unknown>();
  const conflicts = [];
  for (const place of new Set([...from.keys(), ...mine.keys()])) {
    const wanted = mine.get(place);
    const [before, own, theirs] = [from.get(place), wanted, now.get(place)].map(comparableText) as [
      string,
      string,
      string,
    ];
    if (own === before || own === theirs) continue;
    const choice = settled.find((each) => each.place === place && each.theirs === theirs);
    if (theirs === before || choice?.keep === "mine") changes.set(place, wanted);
    else if (choice === undefined) {
      conflicts.push({
        place,
        words: words.place(place),
        theirs,
        theirsWords: words.value(place, now.get(place)),
        mineWords: words.value(place, wanted),
      });
    }
  }
  if (conflicts.length > 0) throw new ChangeConflict(conflicts);
  return changes;
}

/** The same text for the same value, whatever the order of its keys; "" for none. */
export function comparableText(value: unknown): string {
  if (value === undefined) return "";
  return JSON.stringify(value, (_key, each: unknown) =>
    each !== null && typeof each === "object" && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).toSorted(([first], [second]) => (first < second ? -1 : 1)))
      : each,
  );
}

/** Stands between the parts of a place; no name of a field or a file holds it. */
export const placeSeparator = "\u0000";

/** The fields of an object. @param apart names of its parts that have fields of their own */
export function fieldsOf(said: object, apart: readonly string[] = []): Fields {
  const fields = new Map<string, unknown>();
  for (const [name, value] of Object.entries(said)) {
    if (!apart.includes(name)) fields.set(name, value);
    else for (const [part, each] of Object.entries(value)) fields.set(`${name}${placeSeparator}${part}`, each);
  }
  return fields;
}

/** The object with some of its fields changed; a part of which nothing is left is taken away. */
export function withFields<Said extends object>(said: Said, changes: FieldChanges): Said {
  const changed = { ...said } as Record<string, unknown>;
  for (const [place, value] of changes) {
    const [name = "", part] = place.split(placeSeparator);
    const next = part === undefined ? value : withFields((changed[name] ?? {}) as object, new Map([[part, value]]));
    const isNothing = next === undefined || (part !== undefined && Object.keys(next as object).length === 0);
    if (isNothing) delete changed[name];
    else changed[name] = next;
  }
  return changed as Said;
}
