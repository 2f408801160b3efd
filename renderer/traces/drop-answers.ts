import type { Side } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { RecordingAnswers } from "../../electron/boundary/stated-changes.ts";
import { boxHeightFrom } from "../shell/box-height.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traceTables;

/** What the form about a drop holds, as written. */
export interface WrittenDrop {
  /** Metres. */
  readonly height: string;
  readonly leadingLeg: Side | "";
}

export function writtenDrop({ dropHeightMetres, leadingLeg }: TrialResult): WrittenDrop {
  return { height: dropHeightMetres === undefined ? "" : dropHeightMetres.toFixed(2), leadingLeg: leadingLeg ?? "" };
}

/** What was changed, ready for the host: an emptied field takes its statement back; a sentence where it cannot be meant. */
export function dropAnswersFrom(
  written: WrittenDrop,
  before: WrittenDrop,
): { readonly answers: RecordingAnswers } | { readonly problem: string } {
  const text = written.height.trim();
  const height = text === "" ? { metres: null } : boxHeightFrom(text);
  const heightChanged = text !== before.height;
  if (heightChanged && "problem" in height) return height;
  const answers: RecordingAnswers = {
    ...(heightChanged && "metres" in height ? { dropHeightMetres: height.metres } : {}),
    ...(written.leadingLeg === before.leadingLeg ? {} : { leadingLeg: written.leadingLeg || null }),
  };
  return Object.keys(answers).length === 0 ? { problem: prose.nothingWasChanged } : { answers };
}
