import { isOfLimb } from "../events/event.ts";
import type { Limb } from "../ground/limb.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Protocol } from "../stated/protocol-schema.ts";

/** Landings of one day. */
export interface Landings {
  /** On two legs. */
  readonly twoLeg: number;
  /** On each leg alone. */
  readonly left: number;
  readonly right: number;
  /** Recordings that hold a jump of which the landings cannot be counted: nobody said what they are, or they were refused. */
  readonly uncounted: number;
}

/**
 * The landings of a day: every jump that was recorded, practice jumps, excluded and refused ones too, because the knee
 * lands whatever becomes of the recording. Hand in the trials of every session of the day.
 */
export function landingsOf(trials: readonly TrialResult[]): Landings {
  const total = { twoLeg: 0, left: 0, right: 0, uncounted: 0 };
  for (const trial of trials) {
    const landings = landingsOfTrial(trial);
    const where = trial.limb === "both" ? "twoLeg" : trial.limb;
    if (landings === 0) continue;
    if (landings === undefined || where === undefined) total.uncounted += 1;
    else total[where] += landings;
  }
  return total;
}

/**
 * How often one trial landed: a jump once, a drop jump twice (off the box and after its flight), repeated hops once each
 * contact. Zero where the recording holds no attempt (a copy, standing, a file that is no recording); undefined where it
 * holds one of which the landings are not known.
 */
export function landingsOfTrial({ span, test, recognised, status, events }: TrialResult): number | undefined {
  if (span === undefined) return 0;
  const kind = test ?? recognised?.test;
  if (kind === undefined) return undefined;
  const { landings } = testFacts(kind);
  if (landings !== "each contact") return landings;
  if (status === "refused") return undefined;
  return events.filter((event) => event.name === "touchdown" && !isOfLimb(event)).length;
}

/** Landings that a protocol still allows today on these legs; undefined where it sets no limit. */
export function landingsLeft(
  { landingsADay }: Protocol,
  limb: Limb,
  trials: readonly TrialResult[],
): number | undefined {
  if (landingsADay === undefined) return undefined;
  const { twoLeg, left, right } = landingsOf(trials);
  if (limb === "both") return Math.max(0, landingsADay.twoLeg - twoLeg);
  return Math.max(0, landingsADay.perLeg - (limb === "left" ? left : right));
}
