import { assignmentOffers } from "../../core/assignment/assignment-offers.ts";
import { startsFromBox } from "../../core/ground/test-kind.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { entryOf } from "../../core/session/session-entries.ts";
import type { NextRecordings } from "../boundary/stated-changes.ts";

/**
 * What the tester said about the next recordings, as far as nothing else says it of this one; a box and a leading leg
 * only where the test starts from a box.
 * @param alone the session's result with this file alone, which costs the same however many recordings there are
 * @param whole the session's result with all of them; made only where they may say which leg it was
 */
export function unsaidParts(
  next: NextRecordings,
  file: string,
  alone: SessionResult,
  whole: () => SessionResult,
): NextRecordings {
  const first = alone.trials.find((each) => each.file === file);
  if (first === undefined) return {};
  const test = first.test ?? next.test;
  const fromBox = test !== undefined && startsFromBox(test);
  const { limb, dropHeightMetres, leadingLeg } = next;
  return {
    ...(first.test === undefined && next.test !== undefined && { test: next.test }),
    ...(limb !== undefined && isLimbUnsaid(limb, first, alone, whole) && { limb }),
    ...(next.practice === true && first.practice === undefined && { practice: true }),
    ...(fromBox && first.dropHeightMetres === undefined && dropHeightMetres !== undefined && { dropHeightMetres }),
    ...(fromBox && first.leadingLeg === undefined && leadingLeg !== undefined && { leadingLeg }),
  };
}

function isLimbUnsaid(
  limb: NonNullable<NextRecordings["limb"]>,
  first: TrialResult,
  alone: SessionResult,
  whole: () => SessionResult,
): boolean {
  if (!isLegOpen(first, alone)) return false;
  // Where plates and tester say the same, the other recordings cannot make it otherwise.
  if (first.limb === undefined || first.limb === limb) return true;
  const session = whole();
  const amongAll = session.trials.find((each) => each.file === first.file);
  return amongAll !== undefined && isLegOpen(amongAll, session);
}

/** True where neither a statement nor the file's name says which leg jumped, nor a plate whose foot is known. */
function isLegOpen({ limb, plates, file, trial }: TrialResult, { description, folder }: SessionResult): boolean {
  if (limb === undefined) return true;
  if (limb === "both" || plates.every((plate) => plate.proof !== "unproved")) return false;
  if (entryOf(description, file, trial).limb !== undefined) return false;
  return !assignmentOffers({ file, folder }).limb.some((each) => each.from === "file name");
}
