import { RequestRefused } from "./request-refused.ts";
import type { SettledField } from "./settled-fields.ts";

/** What a form started from, and what the person chose where somebody else had changed the same fields. */
export interface StartedFrom<Said> {
  /** What the screen showed when the form began; absent: nothing was shown, and what is asked for holds as it stands. */
  readonly before?: Said;
  readonly settled?: readonly SettledField[];
}

/** A field somebody else changed meanwhile: what it says now, and what the form wants it to say. */
export interface FieldConflict {
  /** Names the field among those of the request. */
  readonly place: string;
  /** The field in words. */
  readonly words: string;
  /** The other's value as text that can be compared. */
  readonly theirs: string;
  readonly theirsWords: string;
  readonly mineWords: string;
}

/** Fields were changed elsewhere since the form began; nothing was changed, and the person is to choose. */
export class ChangeConflict extends RequestRefused {
  readonly fields: readonly FieldConflict[];

  constructor(fields: readonly FieldConflict[]) {
    const each = fields.map(({ words, theirsWords }) => `${words} (now ${theirsWords})`);
    super(`Changed elsewhere in the meantime: ${each.join(", ")}. Nothing was changed.`);
    this.fields = fields;
  }
}
