import { addNoise, addStep, joinRecordings, scaleForce } from "../../../core/simulate/recording-faults.ts";
import { athlete, jumpOf, saidJump, saidSingle, singleOf, written } from "../simulate/faulty/faulty-trial.ts";
import { around, type FindingPairs, kindPair, pairOf, seed } from "./pair.ts";

/** Weighing, and what plates do. The threshold of each stands in the settings catalogue. */
export const weightAndPlatePairs: FindingPairs = {
  // A second of quiet standing is wanted; the coarse look leaves out 30 ms at its end.
  "weighing-short": around(
    (quietSecondsBefore: number) => written(jumpOf(seed, { quietSecondsBefore }), saidJump),
    0.9,
    1.15,
  ),
  // 2 % of 588 N is 11.8 N; two plates of 9 or 7.5 N white noise make 12.8 or 10.7 N.
  "weighing-restless": around((newtons: number) => written(addNoise(still(), seed, newtons), saidJump), 9, 7.5),
  "weight-differs": around(
    (massKg: number) => ({ ...written(jumpOf(seed, { massKg: 70 }), saidJump), massKg }),
    72.3,
    71.7,
  ),
  "weight-implausible": around(
    (massKg: number) => written(scaleForce(jumpOf(seed, { massKg: 100 }), massKg / 100), saidJump),
    255,
    245,
  ),
  // Somebody puts a thing on a plate after the landing; 3 % of the weight may differ.
  "load-changes": around(
    (weightFraction: number) => {
      const jump = jumpOf(seed);
      const newtons = weightFraction * jump.truth.bodyWeightNewtons;
      return written(addStep(jump, 0, jump.truth.events.landingEnd + 0.6, newtons), saidJump);
    },
    0.035,
    0.025,
  ),
  // A hand on a rail before the jump, none after the landing; 1 % of the weight may differ.
  "held-while-weighed": around(
    (railWeightFraction: number) => written(jumpOf(seed, { railWeightFraction }), saidJump),
    0.013,
    0.007,
  ),
  "heights-contradict": kindPair("rail-without-landing"),
  // 3 % between two athletes of one file.
  "several-athletes": around(
    (times: number) => {
      const apart = { emptySecondsBefore: 1, emptySecondsAfter: 1 };
      const other = jumpOf(seed, { ...apart, massKg: times * athlete(seed).massKg });
      return written(joinRecordings([jumpOf(seed, apart), other]), saidJump);
    },
    1.035,
    1.025,
  ),
  "plate-turned": kindPair("one-plate-turned"),
  "plate-offset": around(
    (left: number) => written(jumpOf(seed, { emptySecondsBefore: 1, plateOffsetsNewtons: [left, 0] }), saidJump),
    11,
    9,
  ),
  "plate-drift": around(
    (newtonsPerSecond: number) => {
      const empty = { emptySecondsBefore: 1.2, emptySecondsAfter: 1.2 };
      const drift = { plateDriftsNewtonsPerSecond: [newtonsPerSecond, 0] } as const;
      return written(jumpOf(seed, { ...empty, ...drift }), saidJump);
    },
    // Over some seven seconds one newton is the least that is a drift.
    0.3,
    0.05,
  ),
  "plate-noisy": around(
    (newtons: number) => written(jumpOf(seed, { plateNoiseNewtons: newtons }), saidJump),
    // √2 times as much on both plates; the limit is 5 N.
    4,
    3,
  ),
  "plate-dead": kindPair("plate-dies-in-drop-jump"),
  "plates-equal": around((differing: number) => leftTwice(differing), 0, 1),
  clipped: around((samples: number) => flatTop(samples), 5, 4),
  "landing-other-plate": kindPair("plates-exchanged-in-mid-file"),
  "other-foot-touching": around(
    (otherFootNewtons: number) => written(singleOf(seed, { otherFootNewtons }), saidSingle),
    28,
    14,
  ),
  "leg-swing": kindPair("leg-swing-in-dip"),
  "plates-unproved": {
    has: () => pairOf(unproved, unproved).has(),
    near: kindPair("wrong-limb").near,
  },
};

function still() {
  return jumpOf(seed, { massKg: 60, swayMetres: 0.0002, plateNoiseNewtons: 0 });
}

function unproved() {
  return written(jumpOf(seed), saidJump);
}

/** A jump whose right plate repeats the left one but for so many samples. */
function leftTwice(differing: number) {
  const jump = jumpOf(seed);
  const [left, right] = jump.plates;
  if (left === undefined || right === undefined) throw new Error("The jump has no two plates.");
  const force = left.force.map((newtons, index) => newtons + (index < differing ? 1 : 0));
  return written({ ...jump, plates: [left, { ...right, force }] }, saidJump);
}

/** The landing peak of a jump on one plate cut down to so many equal samples. */
function flatTop(samples: number) {
  const jump = jumpOf(seed, { plates: "one" });
  const [plate] = jump.plates;
  if (plate === undefined) throw new Error("The jump has no plate.");
  const level = [...plate.force].sort((a, b) => b - a)[samples - 1]!;
  const force = plate.force.map((newtons) => Math.min(newtons, level));
  return written({ ...jump, plates: [{ ...plate, force }] }, saidJump);
}
