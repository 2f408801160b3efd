import type { Side } from "../../core/ground/limb.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { contactThreshold, type PlainRun, takeoffBefore, touchdownAfter } from "./plain-contacts.ts";
import type { PlainForce } from "./plain-curve.ts";
import { landingMeasures, limbLandingShare } from "./plain-landing.ts";
import { limbNetImpulses, type PlainPhase, pushForces } from "./plain-phases.ts";
import type { PlainEvent, PlainMeasure } from "./plain-values.ts";

/**
 * Adds each limb of a jump from standing: its own contact events, its forces and impulses over the phases of the body,
 * its landing from its own touchdown, and how far apart the limbs leave and land.
 */
export function addLimbsOfJump(
  limbs: readonly { readonly side: Side; readonly force: PlainForce }[],
  flight: PlainRun,
  body: {
    readonly braking: PlainPhase | undefined;
    readonly propulsion: PlainPhase;
    readonly landingEnd: number;
    readonly weight: number;
  },
  events: PlainEvent[],
  measures: PlainMeasure[],
  settings: Settings,
): void {
  const { weight } = body;
  const contacts = new Map<string, { takeoff: number; touchdown: number }>();
  for (const { side, force } of limbs) {
    // The limb's own threshold, the athlete's weight; a quarter of it is surely load on one foot.
    const threshold = contactThreshold(force, flight, settings);
    const takeoff = takeoffBefore(force, flight, threshold, weight, weight / 4, settings)!;
    const touchdown = touchdownAfter(force, flight, threshold, weight, weight / 4, settings)!;
    contacts.set(side, { takeoff, touchdown });
    events.push({ name: "takeoff", side, time: takeoff }, { name: "touchdown", side, time: touchdown });
    measures.push(
      ...pushForces(force, side, body.braking, body.propulsion),
      ...limbNetImpulses(force, side, body.braking, body.propulsion, weight),
      ...landingMeasures(force, side, touchdown, body.landingEnd, weight * limbLandingShare, settings),
    );
  }
  const left = contacts.get("left");
  const right = contacts.get("right");
  if (left === undefined || right === undefined) return;
  measures.push(
    { id: "limbTakeoffDifference", side: "both", value: right.takeoff - left.takeoff },
    { id: "limbTouchdownDifference", side: "both", value: right.touchdown - left.touchdown },
  );
}
