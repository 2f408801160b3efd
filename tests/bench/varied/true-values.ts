import type { Limb, MeasureSide, Side } from "../../../core/ground/limb.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SimulatedJump } from "../../../core/simulate/countermovement-jump.ts";
import type { SimulatedDropJump } from "../../../core/simulate/drop-jump.ts";
import type { SimulatedDropLanding } from "../../../core/simulate/drop-landing.ts";
import type { HopTruth } from "../../../core/simulate/hops-truth.ts";
import type { SimulatedHops } from "../../../core/simulate/repeated-hops.ts";
import type { SimulatedSquatJump } from "../../../core/simulate/squat-jump.ts";
import type { PhaseTruth } from "../../../core/simulate/truth.ts";

/** The true value of a measure as METHODS §5 defines it, from the simulator's continuous motion. */
export interface TrueValue {
  readonly id: string;
  readonly side: MeasureSide;
  readonly value: number;
}

const limbs: readonly Side[] = ["left", "right"];

/** A countermovement jump's. */
export function trueCountermovementJump(jump: SimulatedJump, limb: Limb): readonly TrueValue[] {
  const { truth } = jump;
  const { events, phases, bodyWeightNewtons: weight } = truth;
  const descent = jump.positionAt(events.endOfUnweighting) - jump.positionAt(events.lowestPosition);
  const lowest = truth.forceAtLowestPositionNewtons;
  return [
    ...weightOf(truth, limb),
    ...jumpOf(truth, limb),
    ...ofLimb(limb, {
      jumpHeightFromStanding: truth.jumpHeightMetres + truth.positionAtTakeoffMetres,
      countermovementDepth: truth.depthMetres,
      timeToTakeoff: truth.timeToTakeoffSeconds,
      reactiveStrengthIndexModified: truth.jumpHeightMetres / truth.timeToTakeoffSeconds,
      unweightingTime: phases.unweighting.seconds,
      unweightingNetImpulse: phases.unweighting.netImpulse,
      forceAtLowestPosition: lowest,
      peakBrakingPower: truth.peakBrakingPowerWatts,
      peakPropulsionPower: truth.peakPropulsionPowerWatts,
      meanPropulsionPower: meanPower(jump, truth, events.lowestPosition, events.takeoff, truth.takeoffVelocity),
      brakingRateOfForceDevelopment: (lowest - weight) / phases.braking.seconds,
      verticalStiffnessBraking: (lowest - weight) / descent,
    }),
    ...phaseOf("braking", phases.braking, weight, limb),
    ...phaseOf("propulsion", phases.propulsion, weight, limb),
    ...landingOf(jump, phases.landing, events.touchdown, events.landingEnd, weight, limb),
    ...differenceOf("limbTakeoffDifference", truth.limbEvents.left?.takeoff, truth.limbEvents.right?.takeoff),
    ...differenceOf("limbTouchdownDifference", truth.limbEvents.left?.touchdown, truth.limbEvents.right?.touchdown),
  ];
}

/** A squat jump's. */
export function trueSquatJump(jump: SimulatedSquatJump, limb: Limb): readonly TrueValue[] {
  const { truth } = jump;
  const { events, phases, bodyWeightNewtons: weight, limbEvents } = truth;
  return [
    ...weightOf(truth, limb),
    ...jumpOf(truth, limb),
    ...ofLimb(limb, {
      timeToTakeoff: truth.timeToTakeoffSeconds,
      reactiveStrengthIndexModified: truth.jumpHeightMetres / truth.timeToTakeoffSeconds,
      peakPropulsionPower: truth.peakPropulsionPowerWatts,
      meanPropulsionPower: meanPower(jump, truth, events.lowestPosition, events.takeoff, truth.takeoffVelocity),
    }),
    ...phaseOf("propulsion", phases.propulsion, weight, limb),
    ...landingOf(jump, phases.landing, events.touchdown, events.landingEnd, weight, limb),
    ...differenceOf("limbTakeoffDifference", limbEvents.left?.takeoff, limbEvents.right?.takeoff),
    ...differenceOf("limbTouchdownDifference", limbEvents.left?.touchdown, limbEvents.right?.touchdown),
  ];
}

/** A drop jump's. */
export function trueDropJump(jump: SimulatedDropJump, limb: Limb): readonly TrueValue[] {
  const { truth } = jump;
  const { events, phases, bodyWeightNewtons: weight, limbEvents } = truth;
  return [
    ...weightOf(truth, limb),
    ...jumpOf(truth, limb),
    ...ofLimb(limb, {
      jumpHeightFromStanding: truth.jumpHeightMetres + truth.positionAtTakeoffMetres,
      contactTime: truth.contactSeconds,
      reactiveStrengthIndex: truth.reactiveStrengthIndex,
      dropHeightEffective: truth.dropHeightEffectiveMetres,
      dropHeightByFlightTime: truth.dropHeightEffectiveMetres,
      dropHeightDifference: 0,
      forceAtLowestPosition: truth.forceAtLowestPositionNewtons,
      peakBrakingPower: truth.peakBrakingPowerWatts,
      peakPropulsionPower: truth.peakPropulsionPowerWatts,
      meanPropulsionPower: meanPower(jump, truth, events.lowestPosition, events.takeoff, truth.takeoffVelocity),
    }),
    ...phaseOf("braking", phases.braking, weight, limb),
    ...phaseOf("propulsion", phases.propulsion, weight, limb),
    ...landingOf(jump, phases.landing, events.landing, events.landingEnd, weight, limb),
    ...differenceOf("limbTakeoffDifference", limbEvents.left?.takeoff, limbEvents.right?.takeoff),
    ...differenceOf("limbTouchdownDifference", limbEvents.left?.landing, limbEvents.right?.landing),
  ];
}

/** A drop landing's. */
export function trueDropLanding(drop: SimulatedDropLanding, limb: Limb): readonly TrueValue[] {
  const { truth } = drop;
  const { events, limbTouchdowns } = truth;
  return [
    ...weightOf(truth, limb),
    ...ofLimb(limb, { dropHeightEffective: truth.dropHeightEffectiveMetres }),
    ...landingOf(drop, truth.landing, events.touchdown, events.landingEnd, truth.bodyWeightNewtons, limb),
    ...differenceOf("limbTouchdownDifference", limbTouchdowns.left, limbTouchdowns.right),
  ];
}

/** A bout's: how many hops there were, and the means of the truly best five. */
export function trueHops({ truth }: SimulatedHops, limb: Limb): readonly TrueValue[] {
  const hops = truth.contacts.flatMap(({ hop }) => hop ?? []);
  const quick = limb === "both" ? hops.filter((hop) => hop.contactSeconds < defaultSettings.slowContactSeconds) : hops;
  const best = quick.sort((a, b) => b.reactiveStrengthIndex - a.reactiveStrengthIndex).slice(0, 5);
  const mean = (of: (hop: NonNullable<HopTruth["hop"]>) => number): number =>
    best.reduce((sum, hop) => sum + of(hop), 0) / best.length;
  return [
    ...weightOf(truth, limb),
    ...ofLimb(limb, {
      hopsFound: hops.length,
      hopsUsed: best.length,
      reactiveStrengthIndexBestFive: mean((hop) => hop.reactiveStrengthIndex),
      hopStiffness: mean(({ contactSeconds: contact, flightSeconds: flight }) => {
        // Dalleau et al. 2004: M·π(tf + tc) / (tc²·((tf + tc)/π − tc/4)).
        return (
          (truth.massKg * Math.PI * (flight + contact)) / (contact ** 2 * ((flight + contact) / Math.PI - contact / 4))
        );
      }),
    }),
  ];
}

function ofLimb(side: MeasureSide, values: Readonly<Record<string, number>>): readonly TrueValue[] {
  return Object.entries(values).map(([id, value]) => ({ id, side, value }));
}

function weightOf(truth: { readonly bodyWeightNewtons: number; readonly massKg: number }, limb: Limb) {
  return ofLimb(limb, { bodyWeight: truth.bodyWeightNewtons, bodyMass: truth.massKg });
}

function jumpOf(
  truth: {
    readonly takeoffVelocity: number;
    readonly jumpHeightMetres: number;
    readonly flightSeconds: number;
    readonly gravity: number;
  },
  limb: Limb,
): readonly TrueValue[] {
  return ofLimb(limb, {
    takeoffVelocity: truth.takeoffVelocity,
    jumpHeightImpulse: truth.jumpHeightMetres,
    flightTime: truth.flightSeconds,
    jumpHeightFlightTime: (truth.gravity * truth.flightSeconds ** 2) / 8,
  });
}

/** Work on the centre of mass from rest over the time it took. */
function meanPower(
  jump: { readonly positionAt: (time: number) => number },
  truth: { readonly massKg: number; readonly gravity: number },
  from: number,
  to: number,
  velocity: number,
): number {
  const rise = jump.positionAt(to) - jump.positionAt(from);
  return (truth.massKg * (velocity ** 2 / 2 + truth.gravity * rise)) / (to - from);
}

function phaseOf(
  name: "braking" | "propulsion",
  phase: PhaseTruth,
  weightNewtons: number,
  limb: Limb,
): readonly TrueValue[] {
  const title = name === "braking" ? "Braking" : "Propulsion";
  const of = (side: MeasureSide): readonly TrueValue[] =>
    ofLimb(side, {
      [`${name}Impulse`]: phase.grossImpulse[side],
      [`peak${title}Force`]: phase.peakForce[side],
      [`mean${title}Force`]: phase.grossImpulse[side] / phase.seconds,
    });
  const half = (weightNewtons / 2) * phase.seconds;
  return [
    ...ofLimb(limb, { [`${name}Time`]: phase.seconds, [`${name}NetImpulse`]: phase.netImpulse }),
    ...of(limb),
    ...(limb === "both"
      ? limbs.flatMap((side) => [
          ...of(side),
          ...ofLimb(side, { [`${name}LimbNetImpulse`]: phase.grossImpulse[side] - half }),
        ])
      : []),
  ];
}

const scanSeconds = 0.00005;

/** The landing's; its first peak is looked for on a grid of 0.05 ms. */
function landingOf(
  jump: { readonly forceAt: (time: number) => number },
  landing: PhaseTruth,
  touchdown: number,
  landingEnd: number,
  weightNewtons: number,
  limb: Limb,
): readonly TrueValue[] {
  let peak = { force: 0, time: touchdown };
  let first: typeof peak | undefined;
  for (let step = 1; touchdown + step * scanSeconds <= landingEnd; step += 1) {
    const time = touchdown + step * scanSeconds;
    const force = jump.forceAt(time);
    if (force > peak.force) peak = { force, time };
    else if (peak.force >= weightNewtons && peak.force - force >= 0.1 * weightNewtons) first ??= peak;
  }
  const of = (side: MeasureSide): readonly TrueValue[] =>
    ofLimb(side, { peakLandingForce: landing.peakForce[side], landingImpulse: landing.grossImpulse[side] });
  return [
    ...of(limb),
    ...(limb === "both" ? limbs.flatMap(of) : []),
    ...ofLimb(limb, {
      timeToPeakLandingForce: peak.time - touchdown,
      ...(first === undefined ? {} : { loadingRate: first.force / (first.time - touchdown) }),
    }),
  ];
}

function differenceOf(id: string, left: number | undefined, right: number | undefined): readonly TrueValue[] {
  return left === undefined || right === undefined ? [] : [{ id, side: "both", value: right - left }];
}
