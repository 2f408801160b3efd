import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

const wanted = [
  "takeoffVelocity",
  "jumpHeightImpulse",
  "jumpHeightFromStanding",
  "dropHeightDifference",
  "countermovementDepth",
];

/** Says where half the flight time gives the velocity, and what is left out because it would only repeat that. */
export function velocityFindings(
  { jump }: MeasureContext,
  expected: readonly string[],
  measures: readonly Measure[],
): readonly Finding[] {
  const { anchor, motion, hops, events } = jump;
  if (anchor.kind !== "flight" || hops !== undefined || !knowsVelocity(motion)) return [];
  const rests =
    events.contactTouchdown === undefined ? "braking and propulsion" : "effective drop height and turning point";
  return [
    proseFinding(
      "velocity-from-flight",
      "warning",
      `No quiet standing of the whole athlete ${events.contactTouchdown === undefined ? "before the jump or " : ""}after the landing gives the velocity, so half the flight time does: ${rests} rest on it.`,
      "Have the athlete stand still for two seconds after the next landing.",
      { removes: absentMeasures(wanted, expected, measures) },
    ),
  ];
}
