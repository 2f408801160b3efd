import type { StartedFrom } from "../refusals/field-conflict.ts";
import { fieldName, fieldValueWords } from "../refusals/field-words.ts";
import { fieldsOf, mergeFields, placeSeparator, withFields } from "../refusals/merge-fields.ts";

/** Part of a record whose own parts are noted one by one. */
const apart = ["conditions"];

/**
 * What a record says after a form about it was kept, which may have begun before somebody else changed something: the
 * fields the form changes, one by one, in what the record says now.
 * @param mine what the form wants the record to say
 * @throws ChangeConflict where the same fields were changed elsewhere
 */
export function editedContent<Content extends object>(
  now: Content,
  mine: Content,
  { before, settled }: StartedFrom<Content>,
): Content {
  if (before === undefined) return mine;
  const sides = { from: fieldsOf(before, apart), mine: fieldsOf(mine, apart), now: fieldsOf(now, apart) };
  return withFields(now, mergeFields(sides, words, settled));
}

const words = {
  place: fieldName,
  value: (place: string, value: unknown) => fieldValueWords(place.split(placeSeparator)[0] ?? place, value),
};
