import type { Limb, Side } from "../limb.ts";
import type { SimulatedPlate, SimulatedRecording } from "./countermovement-jump.ts";
import type { Course } from "./course.ts";
import { quinticStep } from "./displacement.ts";
import type { JumpOptions } from "./options.ts";
import { addPlateErrors } from "./plate-errors.ts";
import type { Random } from "./random.ts";

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

/** A stretch during which the athlete is not on the plates although the body stands: before stepping on, after stepping off. */
export interface PlatePresence {
  /** Stepping on begins here. */
  readonly stepsOnAt?: number;
  /** Stepping off begins here. */
  readonly stepsOffAt?: number;
  /** From this touchdown on the athlete is beside the plates. */
  readonly besideFrom?: number;
}

/** Loss or making of contact that sets a plate ringing, and how hard (0 to 1). */
export interface Stroke {
  readonly time: number;
  readonly part: number;
}

/** Seconds that stepping on or off takes. */
export const stepSeconds = 0.5;

/** Samples a course on its plates, with everything a plate adds. */
export function recordCourse(
  course: Course,
  limbs: { readonly left: (time: number) => number; readonly right: (time: number) => number },
  options: RecordingOptions,
  random: Random,
  parts: {
    readonly sampleCount: number;
    readonly presence: PlatePresence;
    readonly strokes: (foot: Limb) => readonly Stroke[];
  },
): SimulatedRecording {
  const { rateHz } = options;
  const { stepsOnAt, stepsOffAt, besideFrom } = parts.presence;
  const sample = (force: (time: number) => number): Float64Array =>
    Float64Array.from({ length: parts.sampleCount }, (_, index) => {
      const time = index / rateHz;
      if (besideFrom !== undefined && time >= besideFrom) return 0;
      let value = force(time);
      if (stepsOnAt !== undefined) value *= quinticStep(time, stepsOnAt, stepSeconds)[0];
      if (stepsOffAt !== undefined) value *= 1 - quinticStep(time, stepsOffAt, stepSeconds)[0];
      return value;
    });
  const plates = layOutPlates(options, course, limbs, sample);
  for (const [index, plate] of plates.entries()) {
    addPlateErrors(plate.force, { index, rateHz, strokes: parts.strokes(plate.limb) }, options, random);
  }
  return { rateHz, sampleCount: parts.sampleCount, plates };
}

/** Columns in the order of the file. Facing the wrong way puts the other foot on each named plate. */
function layOutPlates(
  options: RecordingOptions,
  course: Course,
  limbs: { readonly left: (time: number) => number; readonly right: (time: number) => number },
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
