import type { Side } from "../ground/limb.ts";
import type { Body, JumpTimes } from "./body.ts";
import type { LimbForces } from "./limb-forces.ts";
import { findMaximum, integrate } from "./quadrature.ts";

/** A force or impulse of both limbs together and of each. */
export interface PerLimb {
  readonly both: number;
  readonly left: number;
  readonly right: number;
}

/** One phase in exact continuous time. */
export interface PhaseTruth {
  readonly seconds: number;
  /** ∫F dt in N·s. */
  readonly grossImpulse: PerLimb;
  /** ∫(F − W) dt in N·s, both limbs: mass times the change of velocity. */
  readonly netImpulse: number;
  /** Largest force in the phase in newtons; each limb's own. */
  readonly peakForce: PerLimb;
}

/** What really happened, in exact continuous time and independent of sampling rate, noise and plate. */
export interface JumpTruth {
  readonly massKg: number;
  readonly gravity: number;
  readonly bodyWeightNewtons: number;
  /** Seconds from the first sample of the recording. */
  readonly events: JumpTimes;
  /** Each working limb's own loss and making of contact. */
  readonly limbEvents: LimbForces["limbTimes"];
  readonly takeoffVelocity: number;
  readonly touchdownVelocity: number;
  /** v²/2g in metres. */
  readonly jumpHeightMetres: number;
  readonly flightSeconds: number;
  readonly timeToTakeoffSeconds: number;
  /** Below the sway-free standing position, positive downwards. */
  readonly depthMetres: number;
  readonly positionAtTakeoffMetres: number;
  readonly positionAtTouchdownMetres: number;
  readonly phases: {
    readonly unweighting: PhaseTruth;
    readonly braking: PhaseTruth;
    readonly propulsion: PhaseTruth;
    readonly landing: PhaseTruth;
  };
  readonly forceAtLowestPositionNewtons: number;
  readonly peakPropulsionPowerWatts: number;
  /** Negative. */
  readonly peakBrakingPowerWatts: number;
  readonly takeoffRateNewtonsPerSecond: number;
  readonly touchdownRateNewtonsPerSecond: number;
  /** Nominal root mean squares of the sway; absent without sway. */
  readonly sway?: { readonly displacementRmsMetres: number; readonly velocityRmsMetresPerSecond: number };
}

/** One phase of a moving body: the net impulse from its velocities, the limbs' impulses by quadrature. */
export function describePhase(
  body: Pick<Body, "massKg" | "weightNewtons" | "force" | "velocity">,
  limbs: Pick<LimbForces, "left" | "right" | "breaks">,
  from: number,
  to: number,
): PhaseTruth {
  const seconds = to - from;
  const netImpulse = body.massKg * (body.velocity(to) - body.velocity(from));
  const of = (force: (time: number) => number): { impulse: number; peak: number } => ({
    impulse: integrate(force, from, to, limbs.breaks),
    peak: findMaximum(force, from, to).value,
  });
  const left = of(limbs.left);
  const right = of(limbs.right);
  return {
    seconds,
    grossImpulse: { both: netImpulse + body.weightNewtons * seconds, left: left.impulse, right: right.impulse },
    netImpulse,
    peakForce: { both: findMaximum((time) => body.force(time), from, to).value, left: left.peak, right: right.peak },
  };
}

/** Works out the truth of a jump from its closed forms; integrals by Gauss–Legendre between the breaks. */
export function describeTruth(body: Body, limbs: LimbForces): JumpTruth {
  const { times, massKg, gravity, weightNewtons } = body;
  const phase = (from: number, to: number): PhaseTruth => describePhase(body, limbs, from, to);
  const power = (time: number): number => body.force(time) * body.velocity(time);
  return {
    massKg,
    gravity,
    bodyWeightNewtons: weightNewtons,
    events: times,
    limbEvents: limbs.limbTimes,
    takeoffVelocity: body.takeoffVelocity,
    touchdownVelocity: body.touchdownVelocity,
    jumpHeightMetres: (body.takeoffVelocity * body.takeoffVelocity) / (2 * gravity),
    flightSeconds: times.touchdown - times.takeoff,
    timeToTakeoffSeconds: times.takeoff - times.firstMovement,
    depthMetres: -body.position(times.lowestPosition),
    positionAtTakeoffMetres: body.positionAtTakeoff,
    positionAtTouchdownMetres: body.positionAtTouchdown,
    phases: {
      unweighting: phase(times.firstMovement, times.endOfUnweighting),
      braking: phase(times.endOfUnweighting, times.lowestPosition),
      propulsion: phase(times.lowestPosition, times.takeoff),
      landing: phase(times.touchdown, times.landingEnd),
    },
    forceAtLowestPositionNewtons: body.force(times.lowestPosition),
    peakPropulsionPowerWatts: findMaximum(power, times.lowestPosition, times.takeoff).value,
    peakBrakingPowerWatts: -findMaximum((time) => -power(time), times.endOfUnweighting, times.lowestPosition).value,
    takeoffRateNewtonsPerSecond: body.takeoffRateNewtonsPerSecond,
    touchdownRateNewtonsPerSecond: body.touchdownRateNewtonsPerSecond,
    ...(body.sway === undefined
      ? {}
      : {
          sway: {
            displacementRmsMetres: body.sway.displacementRmsMetres,
            velocityRmsMetresPerSecond: body.sway.velocityRmsMetresPerSecond,
          },
        }),
  };
}

/** 100 × involved / uninvolved of a quantity of the two limbs. */
export function indexPercent(values: PerLimb, involved: Side): number {
  return involved === "right" ? (100 * values.right) / values.left : (100 * values.left) / values.right;
}
