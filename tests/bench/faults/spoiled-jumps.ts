import type { FindingCode } from "../../../core/ground/finding-codes.ts";
import type { SimulatedJump, SimulatedRecording } from "../../../core/simulate/countermovement-jump.ts";
import type { JumpOptions } from "../../../core/simulate/options.ts";
import { createRandom, type Random } from "../../../core/simulate/random.ts";
import {
  addNoise,
  dropOutPlate,
  joinRecordings,
  limitForce,
  scaleForce,
} from "../../../core/simulate/recording-faults.ts";
import { jumpOf, singleOf } from "../../core/simulate/faulty/faulty-trial.ts";

/** A fault of varied size in varied recordings, and the finding that names it. */
export interface SpoiledKind {
  readonly name: string;
  readonly code: FindingCode;
  readonly draw: (seed: number) => SpoiledJump;
}

/** A recording with a fault, what is stated of it, and what the jump really was. */
export interface SpoiledJump {
  readonly recording: SimulatedRecording;
  readonly limb: "both" | "left";
  readonly jumpHeightMetres: number;
}

/** Rates, masses, noise, sway, one and two legs: none of them is the setting the findings were tuned on (1000 Hz, 1.2 N). */
function varied(random: Random): Partial<JumpOptions> {
  return {
    rateHz: random.pick([500, 800, 1500, 2000]),
    massKg: random.between(45, 115),
    plateNoiseNewtons: random.between(0.4, 3),
    swayMetres: random.between(0.0003, 0.0012),
    pushShape: random.pick(["even", "slow-dip", "early-rise", "late-rise", "two-peaked"] as const),
  };
}

function drawn(
  seed: number,
  make: (random: Random, options: Partial<JumpOptions>) => { jump: SimulatedJump; recording: SimulatedRecording },
  legs: "two" | "either" | "one" = "either",
): SpoiledJump {
  const random = createRandom(seed ^ 0x510e527f);
  const single = legs === "one" || (legs === "either" && random.uniform() < 0.4);
  const options = varied(random);
  const { jump, recording } = make(random, single ? { ...options, limb: "left" } : options);
  return { recording, limb: single ? "left" : "both", jumpHeightMetres: jump.truth.jumpHeightMetres };
}

function jumpBy(seed: number, options: Partial<JumpOptions>): SimulatedJump {
  return options.limb === "left" ? singleOf(seed, options) : jumpOf(seed, options);
}

function alone(jump: SimulatedJump): { jump: SimulatedJump; recording: SimulatedRecording } {
  return { jump, recording: jump };
}

/** The largest force of the left plate before take-off. */
function largestPush(jump: SimulatedJump): number {
  return Math.max(...jump.plates[0]!.force.subarray(0, Math.round(jump.truth.events.takeoff * jump.rateHz)));
}

export const spoiledKinds: readonly SpoiledKind[] = [
  {
    name: "a hand on a rail carries 2 to 20 % into the dip, standing after",
    code: "held-while-weighed",
    draw: (seed) =>
      drawn(seed, (random, options) =>
        alone(jumpBy(seed, { ...options, railWeightFraction: random.between(0.02, 0.2) })),
      ),
  },
  {
    name: "a hand on a rail carries 6 to 20 % into the dip, ended in the landing",
    code: "heights-contradict",
    draw: (seed) =>
      drawn(seed, (random, options) =>
        alone(
          jumpBy(seed, { ...options, railWeightFraction: random.between(0.06, 0.2), endsAfterTouchdownSeconds: 0.3 }),
        ),
      ),
  },
  {
    name: "the left range ends 8 to 25 % below its push",
    code: "clipped",
    draw: (seed) =>
      drawn(seed, (random, options) => {
        const jump = jumpBy(seed, options);
        return { jump, recording: limitForce(jump, random.between(0.75, 0.92) * largestPush(jump), 0) };
      }),
  },
  {
    name: "the same, with the plate's noise behind the range",
    code: "clipped",
    draw: (seed) =>
      drawn(seed, (random, options) => {
        const jump = jumpBy(seed, { ...options, plateNoiseNewtons: 0 });
        const limited = limitForce(jump, random.between(0.75, 0.92) * largestPush(jump), 0);
        return { jump, recording: addNoise(limited, seed, options.plateNoiseNewtons ?? 0) };
      }),
  },
  {
    name: "the other foot presses 30 to 90 N on a plate whose sign is turned",
    code: "plate-turned",
    draw: (seed) =>
      drawn(
        seed,
        (random, options) => {
          const jump = jumpBy(seed, { ...options, otherFootNewtons: random.between(30, 90) });
          return { jump, recording: scaleForce(jump, -1, 1) };
        },
        "one",
      ),
  },
  {
    name: "one of two legs stands on a plate whose sign is turned",
    code: "plate-turned",
    draw: (seed) =>
      drawn(
        seed,
        (random, options) => {
          const jump = jumpBy(seed, options);
          return { jump, recording: scaleForce(jump, -1, random.uniform() < 0.5 ? 0 : 1) };
        },
        "two",
      ),
  },
  {
    name: "a second athlete, 4 to 30 % heavier or lighter, jumps in the same file",
    code: "several-athletes",
    draw: (seed) =>
      drawn(seed, (random, options) => {
        const apart = { ...options, emptySecondsBefore: 1, emptySecondsAfter: 1 };
        const times = 1 + random.between(0.04, 0.3);
        const massKg = (options.massKg ?? 70) * (random.uniform() < 0.5 ? times : 1 / times);
        const jump = jumpBy(seed, apart);
        return { jump, recording: joinRecordings([jump, jumpBy(seed + 2, { ...apart, massKg })]) };
      }),
  },
  {
    name: "the left plate has no contact for 0.015 to 0.3 s in the push",
    code: "samples-lost",
    draw: (seed) =>
      drawn(seed, (random, options) => {
        const jump = jumpBy(seed, options);
        const { lowestPosition, takeoff } = jump.truth.events;
        const from = lowestPosition - random.between(0, 0.15);
        const to = Math.min(from + random.between(0.015, 0.3), takeoff - 0.06);
        const noise = { seed, newtons: options.plateNoiseNewtons ?? 1 };
        return { jump, recording: dropOutPlate(jump, 0, from, to, noise) };
      }),
  },
];
