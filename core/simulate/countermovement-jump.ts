import type { Limb, Side } from "../ground/limb.ts";
import type { Body } from "./body.ts";
import { buildBody } from "./body.ts";
import { quinticStep } from "./displacement.ts";
import type { LimbForces } from "./limb-forces.ts";
import { divideBetweenLimbs } from "./limb-forces.ts";
import type { JumpOptions } from "./options.ts";
import { addPlateErrors } from "./plate-errors.ts";
import { createRandom } from "./random.ts";
import type { JumpTruth } from "./truth.ts";
import { describeTruth } from "./truth.ts";

/** One simulated plate. */
export interface SimulatedPlate {
  /** The column's name. */
  readonly name: string;
  /** The foot that really stood on it; `both` when one plate carries two legs. */
  readonly limb: Limb;
  /** Newtons, one value a sample. */
  readonly force: Float64Array;
}

/** A recording made by the simulator. */
export interface SimulatedRecording {
  readonly rateHz: number;
  readonly sampleCount: number;
  readonly plates: readonly SimulatedPlate[];
}

/** A simulated countermovement jump and what really happened in it. */
export interface SimulatedJump extends SimulatedRecording {
  readonly truth: JumpTruth;
  /** The physical force of both feet together in continuous time (newtons), free of everything a plate adds. */
  readonly forceAt: (time: number) => number;
  /** Velocity (m/s) and position (m, zero in sway-free standing) of the centre of mass in continuous time, upward. */
  readonly velocityAt: (time: number) => number;
  readonly positionAt: (time: number) => number;
}

const stepSeconds = 0.5;
const railReleaseSeconds = 0.25;

/**
 * Simulates a countermovement jump. The centre of mass follows closed forms (piecewise polynomials, sinusoids of the
 * sway), so every true value is exact; samples are the continuous force at the sample instants plus what the plate
 * adds. Samples fall at random phase to all events. The same options give the same bytes.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateCountermovementJump(options: JumpOptions): SimulatedJump {
  const random = createRandom(options.seed);
  const { rateHz } = options;
  const phaseSeconds = random.uniform() / rateHz;
  const before = (options.emptySecondsBefore ?? 0) + (options.quietSecondsBefore ?? 2.2);
  const steppingOn = options.emptySecondsBefore === undefined ? 0 : stepSeconds;
  const cut = options.startsAfterFirstMovementSeconds;
  const firstMovement = (cut === undefined ? before + steppingOn : -cut) + phaseSeconds;
  const body = buildBody(options, firstMovement, random);
  const limbs = divideBetweenLimbs(body, options);

  const steppingOff = body.times.standingAgain + (options.quietSecondsAfter ?? 2.7);
  const end =
    options.endsAfterTouchdownSeconds !== undefined
      ? body.times.touchdown + options.endsAfterTouchdownSeconds
      : options.emptySecondsAfter === undefined
        ? steppingOff
        : steppingOff + stepSeconds + options.emptySecondsAfter;
  const sampleCount = Math.floor(end * rateHz) + 1;
  const onPlate = presence(body, options);
  const sample = (force: (time: number) => number): Float64Array =>
    Float64Array.from({ length: sampleCount }, (_, index) => onPlate(index / rateHz, force));

  const plates = layOutPlates(options, body, limbs, sample);
  for (const [index, plate] of plates.entries()) {
    addPlateErrors(
      plate.force,
      { index, rateHz, strokes: strokesOf(plate.limb, body, limbs, options) },
      options,
      random,
    );
  }
  return {
    rateHz,
    sampleCount,
    plates,
    truth: describeTruth(body, limbs),
    forceAt: body.force,
    velocityAt: body.velocity,
    positionAt: body.position,
  };
}

/** Columns in the order of the file. Facing the wrong way puts the other foot on each named plate. */
function layOutPlates(
  options: JumpOptions,
  body: Body,
  limbs: LimbForces,
  sample: (force: (time: number) => number) => Float64Array,
): SimulatedPlate[] {
  if (options.plates === "one") return [{ name: "force", limb: options.limb, force: sample(body.force) }];
  const footOn = (name: Side): Side => (options.facedWrongWay === true ? (name === "left" ? "right" : "left") : name);
  return (["left", "right"] as const).map((name) => ({
    name,
    limb: footOn(name),
    force: sample(limbs[footOn(name)]),
  }));
}

/** The part of a physical force that reaches the plate: stepping on and off, a hand on a rail, landing beside the plates. */
function presence(body: Body, options: JumpOptions): (time: number, force: (time: number) => number) => number {
  const { firstMovement, touchdown, standingAgain } = body.times;
  const steppingOff = standingAgain + (options.quietSecondsAfter ?? 2.7);
  const rail = options.railWeightFraction ?? 0;
  const empty = options.emptySecondsBefore;
  return (time, force) => {
    if (options.landsBesidePlates === true && time >= touchdown) return 0;
    let value = force(time);
    if (rail !== 0) value *= 1 - rail * (1 - quinticStep(time, firstMovement, railReleaseSeconds)[0]);
    if (empty !== undefined) value *= quinticStep(time, empty, stepSeconds)[0];
    if (options.emptySecondsAfter !== undefined) value *= 1 - quinticStep(time, steppingOff, stepSeconds)[0];
    return value;
  };
}

/** Loss and making of contact on a plate, and how hard each strikes it relative to the whole body. */
function strokesOf(
  limb: Limb,
  body: Body,
  limbs: LimbForces,
  options: JumpOptions,
): readonly { readonly time: number; readonly part: number }[] {
  const times = limb === "both" ? body.times : limbs.limbTimes[limb];
  if (times === undefined) return [];
  const part = options.limb === "both" && limb !== "both" ? 0.5 : 1;
  const landing = { time: times.touchdown, part };
  // A plate that is left rings less than one that is struck.
  return [{ time: times.takeoff, part: part / 2 }, ...(options.landsBesidePlates === true ? [] : [landing])];
}
