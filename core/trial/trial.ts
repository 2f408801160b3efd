import type { Limb } from "../limb.ts";
import type { TestKind } from "../test-kind.ts";

/** A half-open stretch of samples [start, end), counted from the start of the recording. */
export interface SampleSpan {
  readonly start: number;
  readonly end: number;
}

/** One attempt: a view on a recording, never a renumbering. */
export interface Trial {
  /** Counted from 1 within its recording. */
  readonly number: number;
  readonly test: TestKind;
  readonly limb: Limb;
  readonly span: SampleSpan;
  /** The flight of the attempt as the coarse segmentation saw it. */
  readonly flight: SampleSpan;
  /** Loaded quiet standing that ends before the dip; empty (start = end) where there is none. */
  readonly quietBefore: SampleSpan;
  /** Loaded quiet standing after the landing; empty where there is none. */
  readonly quietAfter: SampleSpan;
}
