import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

const wanted: readonly MeasureId[] = [
  "takeoffVelocity",
  "jumpHeightImpulse",
  "jumpHeightFromStanding",
  "dropHeightDifference",
  "countermovementDepth",
];

/** Says where half the flight time gives the velocity, and what is left out because it would only repeat that. */
export function velocityFindings(
  { jump }: MeasureContext,
  expected: readonly MeasureId[],
  measures: readonly Measure[],
): readonly Finding[] {
  const { anchor, motion, hops, events } = jump;
  if (anchor.kind !== "flight" || hops !== undefined || !knowsVelocity(motion)) return [];
  return [
    finding(
      "velocity-from-flight",
      "warning",
      { course: events.contactTouchdown === undefined ? "from standing" : "from a drop" },
      { removes: absentMeasures(wanted, expected, measures) },
    ),
  ];
}
