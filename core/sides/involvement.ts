import type { InvolvedSide, Side } from "../ground/limb.ts";
import type { BodyPart } from "../stated/body-parts.ts";
import type { OtherInjury } from "../stated/other-injury.ts";

/** What a record of an injury or operation says about which side it involves. */
export interface RecordedInjury {
  readonly side: Side;
  /** Absent where nobody knows it: it counts on every day. */
  readonly date?: string;
  readonly bodyPart?: BodyPart;
  /** Marked by a person. Absent in records from before there was a mark. */
  readonly involved?: boolean;
  /** Where it is not the record's date. */
  readonly involvedFrom?: string;
  /** The last day it counts: as involved, or as a caution. */
  readonly until?: string;
  /** Of an injury and of an operation, in words. */
  readonly structure?: string;
  readonly procedure?: string;
}

/**
 * True for a record that makes its side the involved one: one that a person marked, and one from before there were body
 * parts and marks, when every injury and operation was taken for one of an involved knee.
 */
export function isInvolved({ involved, bodyPart }: Pick<RecordedInjury, "involved" | "bodyPart">): boolean {
  return involved ?? bodyPart === undefined;
}

/** True for a record that nobody has given a body part or a mark yet: it counts as it did before there were any. */
export function isFromBefore({ involved, bodyPart }: Pick<RecordedInjury, "involved" | "bodyPart">): boolean {
  return involved === undefined && bodyPart === undefined;
}

/** True on a day from its first to its last, both included; without a day where it has no last one. */
function lastsOn({ date, involvedFrom, until }: RecordedInjury, day: string | undefined): boolean {
  if (day === undefined) return until === undefined;
  const from = involvedFrom ?? date;
  return (from === undefined || from <= day) && (until === undefined || day <= until);
}

/**
 * The involved side on a day, from what a person marked; without a day as it is where nothing has ended. `none`, nobody
 * injured, only where that was stated, or where the marks say that no side is involved yet or any more; undefined where
 * nobody has said anything.
 */
export function involvedSideAt(
  injuries: readonly RecordedInjury[],
  day: string | undefined,
  nobodyInjuredStated = false,
): InvolvedSide | undefined {
  const marked = injuries.filter(isInvolved);
  const sides = new Set(marked.filter((each) => lastsOn(each, day)).map((each) => each.side));
  if (sides.size === 2) return "both";
  const [only] = sides;
  return only ?? (marked.length > 0 || nobodyInjuredStated ? "none" : undefined);
}

/** The injuries and operations on a day that involve no side: each a caution on its limb. */
export function otherInjuriesAt(injuries: readonly RecordedInjury[], day: string | undefined): readonly OtherInjury[] {
  return injuries
    .filter((each) => !isInvolved(each) && lastsOn(each, day))
    .toSorted(({ date: one = "" }, { date: other = "" }) => (one < other ? -1 : one > other ? 1 : 0))
    .map(({ side, bodyPart = "knee", structure, procedure, date }) => ({
      side,
      bodyPart,
      what: structure ?? procedure ?? "injury",
      ...(date === undefined ? {} : { date }),
    }));
}
