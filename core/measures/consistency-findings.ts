import { knowsVelocity, velocityAt } from "../events/kinematics.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import { integrateForce } from "../trial/force-signal.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** Compares the two heights, and impulses summed from force with momentum from velocity. */
export function consistencyFindings(
  context: MeasureContext,
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const findings: Finding[] = [];
  const measured = (id: MeasureId): number | undefined => measures.find((measure) => measure.id === id)?.value;
  const byImpulse = measured("jumpHeightImpulse");
  const byFlight = measured("jumpHeightFlightTime");
  if (byImpulse !== undefined && byFlight !== undefined) {
    const difference = byFlight / byImpulse - 1;
    if (Math.abs(difference) > settings.heightsDifferFraction) {
      findings.push(finding("heights-differ", "warning", { byImpulseMetres: byImpulse, byFlightMetres: byFlight }));
    }
  }
  if (!knowsVelocity(context.jump.motion)) return findings;
  const error = selfCheckError(context);
  if (error > settings.selfCheckFraction) {
    findings.push(finding("self-check-broken", "warning", { partOfPush: error }));
  }
  return findings;
}

/** Largest disagreement of directly summed net impulses with m·Δv, as a part of the momentum at take-off or touchdown. */
function selfCheckError(context: MeasureContext): number {
  const { motion, events } = context.jump;
  const massKg = motion.weightNewtons / motion.gravity;
  const jumps = events.takeoff !== undefined;
  const keys = jumps
    ? (["onset", "endOfUnweighting", "contactTouchdown", "lowestPosition", "takeoff"] as const)
    : (["touchdown", "landingEnd"] as const);
  const marks = keys.flatMap((key) => events[key] ?? []);
  const scale = massKg * Math.abs(velocityAt(motion, events.takeoff ?? events.touchdown ?? motion.startSample));
  let worst = 0;
  for (let index = 1; index < marks.length; index += 1) {
    const from = marks[index - 1]!;
    const to = marks[index]!;
    const direct =
      integrateForce(motion.signal, from, to) - (motion.weightNewtons * (to - from)) / motion.signal.rateHz;
    const byVelocity = massKg * (velocityAt(motion, to) - velocityAt(motion, from));
    worst = Math.max(worst, Math.abs(direct - byVelocity) / scale);
  }
  return worst;
}
