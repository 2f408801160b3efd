import type { InvolvedSide, Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { LayoutAnswers } from "../recording/reading-statements.ts";

/** What was stated outside the files (command line options); it outranks session.json. */
export interface StatedOptions {
  readonly test?: TestKind;
  readonly limb?: Limb;
  readonly layout?: LayoutAnswers;
  readonly massKg?: number;
  readonly dropHeightMetres?: number;
  readonly leadingLeg?: Side;
  readonly involved?: InvolvedSide;
  /** Trials of the session kept in means although their weight differs. */
  readonly keep?: readonly KeptTrial[];
  /** Who states that what was not asked of the cautions is not known. */
  readonly cautionsNotKnownBy?: string;
  /** Local gravity in m/s², stated or from latitude and altitude. */
  readonly gravity?: number;
}

/** A trial that a person keeps; every trial of the file where none is named. */
export interface KeptTrial {
  /** Relative to its session's folder, forward slashes. */
  readonly file: string;
  /** Counted from 1. */
  readonly trial?: number;
}
