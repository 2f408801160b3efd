import { ChangeConflict } from "../refusals/field-conflict.ts";
import { fieldName, fieldValueWords } from "../refusals/field-words.ts";
import { fieldsOf, mergeFields, placeSeparator, withFields } from "../refusals/merge-fields.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { RecordState } from "./record-tables.ts";

const apart = ["content", "references"];

/**
 * What a record says after one step was taken back, or done again, while later changes to its other fields stay.
 * @param from what it said on this side of the step, `to` what it said on the other
 * @throws RequestRefused where what the step changed was changed again since
 */
export function acrossStep(now: RecordState, from: RecordState, to: RecordState): RecordState {
  const [before, mine, current] = [from, to, now].map((state) => fieldsOf(state, apart)) as [Fields, Fields, Fields];
  try {
    const changes = mergeFields({ from: before, mine, now: current }, words);
    // The whole state where nothing else was changed: then it is the same to the last byte.
    const isUntouched = JSON.stringify(now) === JSON.stringify(from);
    if (isUntouched) return to;
    // A part of which nothing is left was taken away whole.
    const merged: Partial<RecordState> = withFields(now, changes);
    return { content: {}, references: {}, binned: to.binned, ...merged };
  } catch (error) {
    if (!(error instanceof ChangeConflict)) throw error;
    const fields = error.fields.map((each) => each.words).join(", ");
    throw new RequestRefused(`What this step changed was changed again since (${fields}). Nothing was changed.`);
  }
}

type Fields = ReturnType<typeof fieldsOf>;

const words = {
  place: (place: string) => fieldName(place.split(placeSeparator).at(-1) ?? place),
  value: fieldValueWords,
};
