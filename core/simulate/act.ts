import type { Limb, Side } from "../ground/limb.ts";
import type { SimulatedPlate, SimulatedRecording } from "./countermovement-jump.ts";
import type { Course } from "./course.ts";
import { buildCourse, joinLaws } from "./course.ts";
import { quinticStep, sumDisplacements } from "./displacement.ts";
import type { Law } from "./law.ts";
import type { LimbTakeoff, LimbTouchdown, OtherFoot, SharedForces, ShareStage } from "./limb-sharing.ts";
import { limbInstant, loadOneLimb, shareBetweenLimbs } from "./limb-sharing.ts";
import type { JumpOptions } from "./options.ts";
import { addPlateErrors } from "./plate-errors.ts";
import { createRandom } from "./random.ts";
import type { SwayGate } from "./sway.ts";
import { drawSway, swayDisplacement } from "./sway.ts";

/** What every simulated test can be asked for besides its movement. */
export type RecordingOptions = Pick<
  JumpOptions,
  | "seed"
  | "rateHz"
  | "massKg"
  | "gravity"
  | "limb"
  | "plates"
  | "swayMetres"
  | "swayBandHz"
  | "plateNoiseNewtons"
  | "ringing"
  | "quantisationNewtons"
  | "clipNewtons"
  | "plateOffsetsNewtons"
  | "plateDriftsNewtonsPerSecond"
  | "hum"
  | "signTurned"
  | "facedWrongWay"
>;

/** The athlete gets on or off the plates, eased over the seconds (zero: at once). */
export interface PresenceStep {
  readonly at: number;
  readonly seconds: number;
  readonly on: boolean;
}

/** What an act does on the recording's clock. */
export interface ActPlan {
  /** Two legs; in rising order. */
  readonly stages?: readonly ShareStage[];
  readonly touchdowns?: readonly LimbTouchdown[];
  readonly takeoffs?: readonly LimbTakeoff[];
  /** When the sway of quiet standing is away. */
  readonly gate?: SwayGate;
  readonly presence?: readonly PresenceStep[];
  /** One leg. */
  readonly presses?: OtherFoot["presses"];
  readonly carriesHalf?: OtherFoot["carriesHalf"];
}

/** A part of a recording: the laws in order, what they mean for limbs, sway and plates, and what really happened. */
export interface Act<Truth> {
  readonly laws: readonly Law[];
  /** Given the start of each law and the end of the last. */
  readonly plan: (starts: readonly number[]) => ActPlan;
  readonly describe: (scene: Scene, starts: readonly number[], plan: ActPlan) => Truth;
}

/** The whole body and its limbs in continuous time. */
export interface Scene {
  readonly course: Course;
  readonly limbs: SharedForces;
}

/** A recording and, for each act, what really happened in it. */
export interface RecordedActs<Truth> extends SimulatedRecording {
  readonly truths: readonly Truth[];
  /** The physical force of both feet together in continuous time (newtons), free of everything a plate adds. */
  readonly forceAt: (time: number) => number;
  /** Velocity (m/s) and position (m, zero in sway-free standing) of the centre of mass in continuous time, upward. */
  readonly velocityAt: (time: number) => number;
  readonly positionAt: (time: number) => number;
}

export const standardGravity = 9.80665;

/**
 * Records acts one after the other as one body with one sway. Closed forms throughout; samples are the continuous force
 * at the sample instants plus what the plate adds, at random phase to all events. The same options give the same bytes.
 * `endAt` cuts the recording short, given the plans; absent: the last act's end.
 */
export function recordActs<Truth>(
  options: RecordingOptions,
  startShare: number,
  acts: readonly Act<Truth>[],
  endAt?: (plans: readonly ActPlan[]) => number | undefined,
): RecordedActs<Truth> {
  const random = createRandom(options.seed);
  const { rateHz, limb } = options;
  let start = random.uniform() / rateHz;
  const placed = acts.map((act) => {
    const stretches = joinLaws(act.laws, start);
    start = stretches[stretches.length - 1]?.end ?? start;
    const starts = [...stretches.map((each) => each.start), start];
    return { act, stretches, starts, plan: act.plan(starts) };
  });
  const plans = placed.map((each) => each.plan);
  const gates = plans.flatMap((plan) => (plan.gate === undefined ? [] : [plan.gate]));
  const sway =
    options.swayMetres === undefined
      ? []
      : [swayDisplacement(drawSway(random, options.swayMetres, options.swayBandHz), ...gates)];
  const course = buildCourse(
    options.massKg,
    options.gravity ?? standardGravity,
    placed.flatMap((each) => each.stretches),
    sumDisplacements(sway),
  );
  const touchdowns = plans.flatMap((plan) => plan.touchdowns ?? []);
  const takeoffs = plans.flatMap((plan) => plan.takeoffs ?? []);
  const limbs =
    limb === "both"
      ? shareBetweenLimbs(course, {
          startShare,
          stages: plans.flatMap((plan) => plan.stages ?? []),
          touchdowns,
          takeoffs,
        })
      : loadOneLimb(course, limb, otherFootOf(plans));
  const presence = plans.flatMap((plan) => plan.presence ?? []);
  const sampleCount = Math.floor((endAt?.(plans) ?? start) * rateHz) + 1;
  const sample = (force: (time: number) => number): Float64Array =>
    Float64Array.from({ length: sampleCount }, (_, index) => {
      const part = presenceAt(presence, index / rateHz);
      return part === 0 ? 0 : part * force(index / rateHz);
    });
  const plates = layOutPlates(options, course, limbs, sample);
  for (const [index, plate] of plates.entries()) {
    const strokes = strokesOn(plate.limb, limb, touchdowns, takeoffs, presence);
    addPlateErrors(plate.force, { index, rateHz, strokes }, options, random);
  }
  return {
    rateHz,
    sampleCount,
    plates,
    truths: placed.map(({ act, starts, plan }) => act.describe({ course, limbs }, starts, plan)),
    forceAt: course.force,
    velocityAt: course.velocity,
    positionAt: course.position,
  };
}

/** Each working limb's own instant of a making or loss of contact. */
export function limbInstants(
  limb: Limb,
  event: LimbTouchdown | LimbTakeoff,
  kind: "touchdown" | "takeoff",
): Readonly<Partial<Record<Side, number>>> {
  return {
    ...(limb === "right" ? {} : { left: limbInstant(event, "left", kind) }),
    ...(limb === "left" ? {} : { right: limbInstant(event, "right", kind) }),
  };
}

function otherFootOf(plans: readonly ActPlan[]): OtherFoot {
  const carriesHalf = plans.find((plan) => plan.carriesHalf !== undefined)?.carriesHalf;
  return {
    presses: plans.flatMap((plan) => plan.presses ?? []),
    ...(carriesHalf === undefined ? {} : { carriesHalf }),
  };
}

/** The part of the body's force that reaches the plates. */
function presenceAt(steps: readonly PresenceStep[], time: number): number {
  let part = steps[0]?.on === true ? 0 : 1;
  for (const { at, seconds, on } of steps) {
    const done = seconds === 0 ? (time >= at ? 1 : 0) : quinticStep(time, at, seconds)[0];
    part += on ? done * (1 - part) : -done * part;
  }
  return part;
}

/** Columns in the order of the file. Facing the wrong way puts the other foot on each named plate. */
function layOutPlates(
  options: RecordingOptions,
  course: Course,
  limbs: SharedForces,
  sample: (force: (time: number) => number) => Float64Array,
): SimulatedPlate[] {
  if (options.plates === "one") return [{ name: "force", limb: options.limb, force: sample(course.force) }];
  const footOn = (name: Side): Side => (options.facedWrongWay === true ? (name === "left" ? "right" : "left") : name);
  return (["left", "right"] as const).map((name) => ({
    name,
    limb: footOn(name),
    force: sample(limbs[footOn(name)]),
  }));
}

/** Losses and makings of contact that set a plate ringing, and how hard. */
function strokesOn(
  foot: Limb,
  limb: Limb,
  touchdowns: readonly LimbTouchdown[],
  takeoffs: readonly LimbTakeoff[],
  presence: readonly PresenceStep[],
): readonly { readonly time: number; readonly part: number }[] {
  if (limb !== "both" && foot !== limb) return [];
  const part = limb === "both" && foot !== "both" ? 0.5 : 1;
  const instant = (event: LimbTouchdown | LimbTakeoff, kind: "touchdown" | "takeoff"): number =>
    foot === "both" ? event.time : limbInstant(event, foot, kind);
  return [
    ...touchdowns
      .filter((each) => presenceAt(presence, each.time) > 0)
      .map((each) => ({ time: instant(each, "touchdown"), part })),
    // A plate that is left rings less than one that is struck.
    ...takeoffs.map((each) => ({ time: instant(each, "takeoff"), part: part / 2 })),
  ];
}
