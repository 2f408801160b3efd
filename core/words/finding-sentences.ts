import type { Answer } from "../ground/answer.ts";

/** What a finding says: one plain sentence on what was seen, with the figures, and one on what to do about it. */
export interface Told {
  readonly message: string;
  readonly action: string;
}

/** The sentences of a stage's findings, made from their figures; `answers` are those that would settle the finding. */
export type FindingSentences<Figures> = {
  readonly [Kind in keyof Figures]: (figures: Figures[Kind], answers: readonly Answer[]) => Told;
};
