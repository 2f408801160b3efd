import type { DecimalMark } from "../bytes/number-text.ts";
import type { InvolvedSide, Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { ColumnKey } from "../recording/column-key.ts";
import type { ForceUnit } from "../recording/force-units.ts";
import type {
  CautionAnswers,
  ClinicLimits,
  EffusionGrade,
  GateOpening,
  KneeReading,
  SessionOperation,
  stopKinds,
} from "./cautions-schema.ts";
import type { EventEdit } from "./event-edit.ts";
import type { Protocol } from "./protocol.ts";
import type { ReferenceValue } from "./reference-value.ts";

/** What a person said about one file, or about one trial of it. */
export interface FileEntry {
  /** Path relative to the session's folder, forward slashes. */
  readonly file: string;
  /** Counted from 1; absent: every trial of the file. */
  readonly trial?: number;
  readonly test?: TestKind;
  readonly limb?: Limb;
  readonly rateHz?: number;
  readonly unit?: ForceUnit;
  /** Decides where the marks of the numbers have two readings. */
  readonly decimalMark?: DecimalMark;
  /** Several columns joined by plus signs ("2+3") are added; time "none": the time column is not to be used. */
  readonly columns?: {
    readonly time?: ColumnKey;
    readonly left?: ColumnKey;
    readonly right?: ColumnKey;
    readonly total?: ColumnKey;
  };
  /** True when the feet stood on each other's plates in this file, whatever named them. */
  readonly swapPlates?: boolean;
  /** True to put the samples on an even time base; never across a gap. */
  readonly resample?: boolean;
  /** The rate of that even time base; alone it asks for it as well. */
  readonly resampleHz?: number;
  /** Excluded by a person, with a reason. */
  readonly excluded?: { readonly reason: string };
  /** Kept by a person in means although its weight differs from the session's. */
  readonly kept?: boolean;
  /** A person has looked at the events of this trial. */
  readonly seen?: boolean;
  /** A practice jump: always a landing, never an attempt and in no mean. */
  readonly practice?: boolean;
  readonly events?: readonly EventEdit[];
  /** Which foot stood on which force column in this file; stated by the tester, outranks the session's `plates`. */
  readonly plates?: readonly StatedPlate[];
  /** Height of the box of drop jumps and drop landings; outranks the session's. */
  readonly dropHeightMetres?: number;
  /** The leg that steps off the box first; outranks the session's. */
  readonly leadingLeg?: Side;
}

/** Parts of the body that an injury or operation may name. */
export const bodyParts = ["knee", "hip", "thigh", "lower leg", "ankle", "foot", "other"] as const;

export type BodyPart = (typeof bodyParts)[number];

/** An injury or operation that does not make its side the involved one: a caution on that limb. */
export interface OtherInjury {
  readonly side: Side;
  readonly bodyPart: BodyPart;
  /** What it is, in words ("sprain of the outer ligaments"). */
  readonly what: string;
  /** ISO date (YYYY-MM-DD). */
  readonly date?: string;
}

/** The foot that stood on one force column, as the tester says. */
export interface StatedPlate {
  readonly column: string;
  readonly foot: Side;
}

/** Everything a person has stated about one session: the content of `session.json` (build the schema from this). */
export interface SessionDescription {
  readonly athlete?: {
    readonly code: string;
    readonly name?: string;
    readonly sex?: "female" | "male";
    readonly birthYear?: number;
    readonly sport?: string;
    /** Level of play in words ("national league"). */
    readonly level?: string;
  };
  readonly involved?: InvolvedSide;
  /** The injury in words ("right knee, anterior cruciate ligament reconstruction, hamstring graft"). */
  readonly injury?: string;
  /** Injuries on this day that involve no side, each a caution on its limb. */
  readonly otherInjuries?: readonly OtherInjury[];
  /** ISO date (YYYY-MM-DD). */
  readonly date?: string;
  readonly milestone?: string;
  readonly massKg?: number;
  readonly gravity?: number;
  /** What is tested in this session: kept whole, so that a later change of the clinic's protocol alters no session. */
  readonly protocol?: Protocol;
  readonly dropHeightMetres?: number;
  readonly leadingLeg?: Side;
  /** Which foot stood on which force column; counts as stated by the tester. */
  readonly plates?: readonly StatedPlate[];
  /** The operation that the involved knee had; absent where it had none, or nobody stated it. */
  readonly operation?: SessionOperation;
  /** Worst pain during the tests, 0 to 10, and effusion, as one statement without a time; `readings` have theirs. */
  readonly pain?: number;
  readonly effusion?: EffusionGrade;
  /** Pain and effusion as they were read, in the order of writing; only ever added to. */
  readonly readings?: readonly KneeReading[];
  /** Without a kind the reason may be the knee, and counts so. */
  readonly stopped?: { readonly reason: string; readonly kind?: (typeof stopKinds)[number] };
  /**
   * The cautions for jump testing: their answers, only ever added to. `answeredBy`, `date` and `note` alone say that
   * somebody asked, and no answer.
   */
  readonly cautions?: {
    readonly answeredBy?: string;
    readonly date?: string;
    readonly note?: string;
    readonly answers?: readonly CautionAnswers[];
  };
  /** What the named treating clinician opened although it was closed; only ever added to. */
  readonly gateOpenings?: readonly GateOpening[];
  /** The clinic's limits as they were for this session; absent: the program's default. */
  readonly limits?: ClinicLimits;
  /** True for recordings made by a simulator; printed on every sheet. */
  readonly simulated?: boolean;
  readonly note?: string;
  readonly references?: readonly ReferenceValue[];
  readonly files?: readonly FileEntry[];
}
