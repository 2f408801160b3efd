import type { EndMismatch } from "../events/end-mismatch.ts";
import type { TrialEvent } from "../events/event.ts";
import type { Finding } from "../ground/finding.ts";
import type { Limb, Side } from "../ground/limb.ts";
import type { RecognisedTest } from "../ground/recognised-test.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { LimbContactTime } from "../measures/hop-limb-times.ts";
import type { Hop } from "../measures/hops.ts";
import type { Measure } from "../measures/measure.ts";
import type { FeetInDoubt, PlateProof } from "../recording/recording.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** How body weight of a trial was found. */
export interface WeightUsed {
  readonly newtons: number;
  /**
   * Standard uncertainty of the weighing (or of an entered mass) alone, newtons, with its floor. The uncertainty of the
   * measure `bodyWeight` differs: it has that of the plate's zero too and, by momentum balance, of the floor only the
   * part that is sway.
   */
  readonly uncertainty: number;
  readonly from:
    | "quiet standing before the jump"
    | "quiet standing before and after the jump"
    | "quiet standing after the landing"
    | "other trials on the same plates"
    | "other trials on other plates"
    | "entered mass";
  /** Weighings of other trials it is made from; only where it is theirs. */
  readonly trials?: number;
  /** The weighing window in samples of the recording; absent without standing of its own. */
  readonly window?: SampleSpan;
  /** The trial's other estimate, for comparison; absent where there is none. */
  readonly other?: { readonly newtons: number; readonly uncertainty: number; readonly from: WeightUsed["from"] };
}

/** One hop of repeated hops. */
export interface HopResult extends Hop {
  /** True when the means of the bout are made from it. */
  readonly used: boolean;
  /** How long each limb stood on its own plate, seconds; absent where both limbs share a plate or only one hops. */
  readonly limbs?: readonly LimbContactTime[];
}

/** One plate under a trial. */
export interface PlateUsed {
  readonly name: string;
  readonly limb: Limb;
  readonly proof: PlateProof;
  /** What the empty plate read and was taken off, newtons, where the trial begins; absent where nothing was. */
  readonly zeroNewtons?: number;
}

/** One trial as analysed. `refused`: no measure at all; `partial`: some could not be made, each named in a finding. */
export interface TrialResult {
  /** Relative to its session's folder, forward slashes. */
  readonly file: string;
  readonly sha256: string;
  readonly trial: number;
  readonly status: "analysed" | "partial" | "refused";
  readonly test?: TestKind;
  readonly limb?: Limb;
  /** Height of the box stepped off, metres, as stated; only in tests that start from a box. */
  readonly dropHeightMetres?: number;
  /** The leg that stepped off the box first, as stated; only in tests that start from a box. */
  readonly leadingLeg?: Side;
  readonly rate?: number;
  readonly timeOrigin?: number;
  readonly span?: SampleSpan;
  readonly plates: readonly PlateUsed[];
  /**
   * Present while it is not known which foot stood where, and that matters: what belongs to a limb then carries its
   * plate and no side. Of a single-leg trial `unproved` says that only the loaded plate's name told the limb.
   */
  readonly feet?: FeetInDoubt;
  readonly weight?: WeightUsed;
  readonly events: readonly TrialEvent[];
  readonly measures: readonly Measure[];
  /** The hops of repeated hops, in order; absent in every other test. */
  readonly hops?: readonly HopResult[];
  /** What the trace looks like by itself: an offer with its reason, never a decision. Absent without an attempt or an offer. */
  readonly recognised?: RecognisedTest;
  /** Where velocity and position end up after the jump by the weight of the standing before it alone. */
  readonly endMismatch?: EndMismatch;
  readonly findings: readonly Finding[];
  readonly excluded?: { readonly reason: string };
  /** Held out of means because its weight differs from the session's, until a person keeps it; the reason in words. */
  readonly held?: { readonly reason: string };
  /** True where a person keeps the trial although its weight differs. */
  readonly kept?: true;
  /** A person called it a practice jump: always a landing, never an attempt and in no mean. */
  readonly practice?: true;
  readonly seen: boolean;
  readonly edits: readonly EventEdit[];
}
