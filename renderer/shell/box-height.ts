import { words } from "../words/words.ts";

const prose = words.screens.recordingQuestions;

const highestBoxMetres = 2;

/** A height of a box as it was written, metres with a point or a comma; a sentence where it cannot be meant. */
export function boxHeightFrom(written: string): { readonly metres: number } | { readonly problem: string } {
  const metres = Number(written.trim().replace(",", "."));
  return metres > 0 && metres <= highestBoxMetres ? { metres } : { problem: prose.boxHeightIsANumber };
}
