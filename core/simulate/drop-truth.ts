import type { Limb, Side } from "../ground/limb.ts";
import type { ActPlan, Scene } from "./act.ts";
import type { ContactLaw } from "./contact-law.ts";
import type { Course } from "./course.ts";
import type { DropJumpOptions } from "./drop-options.ts";
import type { SharedForces } from "./limb-sharing.ts";
import { limbInstant } from "./limb-sharing.ts";
import { findMaximum } from "./quadrature.ts";
import type { PhaseTruth } from "./truth.ts";
import { describePhase } from "./truth.ts";

/** A phase of a test on two limbs, with what each limb does beyond carrying half the weight. */
export interface LimbPhaseTruth extends PhaseTruth {
  /** ∫(F_limb − W/2) dt in N·s. */
  readonly limbNetImpulse: { readonly left: number; readonly right: number };
}

/** One limb's own making and loss of contact. */
export interface DropLimbEvents {
  readonly touchdown: number;
  readonly takeoff: number;
  readonly landing: number;
}

/** What really happened in a drop jump, in exact continuous time. Seconds from the first sample. */
export interface DropJumpTruth {
  readonly massKg: number;
  readonly gravity: number;
  readonly bodyWeightNewtons: number;
  readonly boxHeightMetres: number;
  /** v²/2g at the first touchdown. */
  readonly dropHeightEffectiveMetres: number;
  readonly leadingLeg?: Side;
  readonly events: {
    /** First and second contact: that of the jump and that of the landing. */
    readonly touchdown: number;
    readonly lowestPosition: number;
    readonly takeoff: number;
    readonly landing: number;
    readonly landingEnd: number;
    readonly standingAgain: number;
  };
  /** Each working limb's own. */
  readonly limbEvents: Readonly<Partial<Record<Side, DropLimbEvents>>>;
  /** Negative. */
  readonly touchdownVelocity: number;
  readonly takeoffVelocity: number;
  /** Negative. */
  readonly landingVelocity: number;
  readonly contactSeconds: number;
  readonly flightSeconds: number;
  /** v²/2g after take-off, and g·t²/8 of the true flight. */
  readonly jumpHeightMetres: number;
  readonly jumpHeightFlightTimeMetres: number;
  /** Metres over seconds of contact, with the height of the flight time and with v²/2g. */
  readonly reactiveStrengthIndex: number;
  readonly reactiveStrengthIndexImpulse: number;
  readonly positionAtTouchdownMetres: number;
  readonly positionAtTakeoffMetres: number;
  readonly positionAtLandingMetres: number;
  readonly positionLowestMetres: number;
  readonly phases: {
    readonly braking: LimbPhaseTruth;
    readonly propulsion: LimbPhaseTruth;
    readonly landing: LimbPhaseTruth;
  };
  readonly forceAtLowestPositionNewtons: number;
  readonly peakPropulsionPowerWatts: number;
  /** Negative. */
  readonly peakBrakingPowerWatts: number;
  /** Of the half sine only: largest force over the fall of the centre of mass. */
  readonly springStiffnessNewtonsPerMetre?: number;
}

/** One phase with both limbs' net impulses. */
export function describeLimbPhase(course: Course, limbs: SharedForces, from: number, to: number): LimbPhaseTruth {
  const phase = describePhase(course, limbs, from, to);
  const half = (course.weightNewtons / 2) * phase.seconds;
  return {
    ...phase,
    limbNetImpulse: { left: phase.grossImpulse.left - half, right: phase.grossImpulse.right - half },
  };
}

/** Works out the truth of a drop jump from its closed forms. */
export function describeDropJump(
  { course, limbs }: Scene,
  options: DropJumpOptions,
  events: DropJumpTruth["events"],
  contact: ContactLaw,
  plan: ActPlan,
): DropJumpTruth {
  const { touchdown, lowestPosition, takeoff, landing, landingEnd } = events;
  const { gravity, massKg } = course;
  // The laws' own ends: reading the course at a touchdown would be the air before it.
  const touchdownVelocity = contact.velocity(0);
  const takeoffVelocity = contact.velocity(contact.seconds);
  const flightSeconds = landing - takeoff;
  const contactSeconds = takeoff - touchdown;
  const jumpHeightMetres = takeoffVelocity ** 2 / (2 * gravity);
  const jumpHeightFlightTimeMetres = (gravity * flightSeconds ** 2) / 8;
  const power = (time: number): number => course.force(time) * course.velocity(time);
  const stiffness = contact.springStiffnessPerKg;
  return {
    massKg,
    gravity,
    bodyWeightNewtons: course.weightNewtons,
    boxHeightMetres: options.boxHeightMetres,
    dropHeightEffectiveMetres: touchdownVelocity ** 2 / (2 * gravity),
    ...(options.leadingLeg === undefined ? {} : { leadingLeg: options.leadingLeg }),
    events,
    limbEvents: limbEventsOf(options.limb, plan),
    touchdownVelocity,
    takeoffVelocity,
    landingVelocity: takeoffVelocity - gravity * flightSeconds,
    contactSeconds,
    flightSeconds,
    jumpHeightMetres,
    jumpHeightFlightTimeMetres,
    reactiveStrengthIndex: jumpHeightFlightTimeMetres / contactSeconds,
    reactiveStrengthIndexImpulse: jumpHeightMetres / contactSeconds,
    positionAtTouchdownMetres: contact.positionAtTouchdown,
    positionAtTakeoffMetres: contact.position(contact.seconds),
    positionAtLandingMetres: course.position(landing),
    positionLowestMetres: course.position(lowestPosition),
    phases: {
      braking: describeLimbPhase(course, limbs, touchdown, lowestPosition),
      propulsion: describeLimbPhase(course, limbs, lowestPosition, takeoff),
      landing: describeLimbPhase(course, limbs, landing, landingEnd),
    },
    forceAtLowestPositionNewtons: course.force(lowestPosition),
    peakPropulsionPowerWatts: findMaximum(power, lowestPosition, takeoff).value,
    peakBrakingPowerWatts: -findMaximum((time) => -power(time), touchdown, lowestPosition).value,
    ...(stiffness === undefined ? {} : { springStiffnessNewtonsPerMetre: massKg * stiffness }),
  };
}

function limbEventsOf(limb: Limb, plan: ActPlan): DropJumpTruth["limbEvents"] {
  const [touchdown, landing] = plan.touchdowns ?? [];
  const [takeoff] = plan.takeoffs ?? [];
  if (touchdown === undefined || landing === undefined || takeoff === undefined) return {};
  const of = (side: Side): DropLimbEvents => ({
    touchdown: limbInstant(touchdown, side, "touchdown"),
    takeoff: limbInstant(takeoff, side, "takeoff"),
    landing: limbInstant(landing, side, "touchdown"),
  });
  return { ...(limb === "right" ? {} : { left: of("left") }), ...(limb === "left" ? {} : { right: of("right") }) };
}
