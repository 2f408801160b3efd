import { recordActs } from "../../../../core/simulate/act.ts";
import { simulateBrokenOffJump } from "../../../../core/simulate/broken-off-jump.ts";
import { countermovementAct } from "../../../../core/simulate/countermovement-act.ts";
import { simulateDropLanding } from "../../../../core/simulate/drop-landing.ts";
import { addStep } from "../../../../core/simulate/recording-faults.ts";
import { simulateHops } from "../../../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../../../core/simulate/squat-jump.ts";
import { standAct } from "../../../../core/simulate/standing-acts.ts";
import type { FaultyFile, FaultyKind } from "./faulty-trial.ts";
import {
  athlete,
  dropOf,
  jumpOf,
  saidDrop,
  saidHops,
  saidJump,
  saidSingle,
  saidSquat,
  singleOf,
  withMass,
  written,
} from "./faulty-trial.ts";

function jumpsInARow(seed: number, quietBetween: number, bounceFlightSeconds?: number): FaultyFile {
  const { massKg } = athlete(seed);
  const jump = { massKg, limb: "both", jumpHeightMetres: 0.27 } as const;
  const first = countermovementAct({ ...jump, ...(bounceFlightSeconds === undefined ? {} : { bounceFlightSeconds }) });
  const second = bounceFlightSeconds === undefined ? [standAct(quietBetween), countermovementAct(jump)] : [];
  return written(recordActs(athlete(seed), 0.5, [standAct(2.2), first, ...second, standAct(2.6)]), saidJump);
}

function standingOnly(seed: number, depthMetres: number): FaultyFile["text"] {
  const { massKg, swayMetres } = athlete(seed);
  const recording = simulateBrokenOffJump({
    seed,
    rateHz: 1000,
    massKg,
    plates: "two",
    depthMetres,
    swayMetres,
    plateNoiseNewtons: 1.2,
  });
  return written(recording, saidJump).text;
}

function squat(seed: number, dip?: { readonly weightFraction: number; readonly seconds: number }): FaultyFile {
  const options = { ...athlete(seed), jumpHeightMetres: 0.25, ...(dip === undefined ? {} : { dip }) };
  return written(simulateSquatJump(options), saidSquat);
}

function hops(seed: number, contacts: readonly number[]): FaultyFile {
  const options = {
    ...athlete(seed),
    entryHeightMetres: 0.18,
    hops: contacts.map((contactSeconds) => ({ contactSeconds, jumpHeightMetres: 0.2 })),
  };
  return written(simulateHops(options), saidHops);
}

function stepDown(seed: number): FaultyFile["text"] {
  return written(simulateDropLanding({ ...athlete(seed), boxHeightMetres: 0.3, leadingLeg: "left" }), saidDrop).text;
}

/** What the athlete did wrong, or somebody said wrongly. */
export const faultyMovements: readonly FaultyKind[] = [
  {
    kind: "jumps-without-standing",
    fault: "a second jump follows the first after 0.15 s of standing",
    nearMiss: "a bounce of 0.12 s after the landing",
    bad: (seed) => jumpsInARow(seed, 0.15),
    near: (seed) => jumpsInARow(seed, 0, 0.12),
  },
  {
    kind: "two-jumps",
    fault: "two whole jumps in one file",
    nearMiss: "one jump and a long standing after it",
    bad: (seed) => jumpsInARow(seed, 2.2),
    near: (seed) => written(jumpOf(seed, { quietSecondsAfter: 6 }), saidJump),
  },
  {
    kind: "broken-off",
    fault: "a dip of 22 cm and a return to standing",
    nearMiss: "a jump of 5 cm",
    bad: (seed) => ({ text: standingOnly(seed, 0.22), said: saidJump }),
    near: (seed) => written(jumpOf(seed, { jumpHeightMetres: 0.05, timeToTakeoffSeconds: 0.7 }), saidJump),
  },
  {
    kind: "standing-called-drop-jump",
    fault: "an athlete standing on the plates, called a drop jump",
    nearMiss: "a low, slow drop jump",
    bad: (seed) => ({ text: standingOnly(seed, 0.002), said: saidDrop }),
    near: (seed) => written(dropOf(seed, { jumpHeightMetres: 0.09, contactSeconds: 0.4 }), saidDrop),
  },
  {
    kind: "standing-called-jump",
    fault: "an athlete standing on the plates, called a countermovement jump",
    nearMiss: "a jump of 7 cm",
    bad: (seed) => ({ text: standingOnly(seed, 0.002), said: saidJump }),
    near: (seed) => written(jumpOf(seed, { jumpHeightMetres: 0.07 }), saidJump),
  },
  {
    kind: "step-down-called-drop-jump",
    fault: "a drop landing called a drop jump",
    nearMiss: "a drop jump of 10 cm",
    bad: (seed) => ({ text: stepDown(seed), said: saidDrop }),
    near: (seed) => written(dropOf(seed, { jumpHeightMetres: 0.1, contactSeconds: 0.24 }), saidDrop),
  },
  {
    kind: "jump-called-drop-jump",
    fault: "a countermovement jump called a drop jump",
    nearMiss: "a drop jump after a long empty stretch",
    bad: (seed) => written(jumpOf(seed), saidDrop),
    near: (seed) => written(dropOf(seed, { emptySecondsBefore: 4 }), saidDrop),
  },
  {
    kind: "drop-jump-called-jump",
    fault: "a drop jump called a countermovement jump",
    nearMiss: "a countermovement jump after stepping on",
    bad: (seed) => written(dropOf(seed), saidJump),
    near: (seed) => written(jumpOf(seed, { emptySecondsBefore: 1 }), saidJump),
  },
  {
    kind: "jump-called-squat-jump",
    fault: "a countermovement jump called a squat jump",
    nearMiss: "a squat jump with a dip of 2 %",
    bad: (seed) => written(jumpOf(seed), saidSquat),
    near: (seed) => squat(seed, { weightFraction: 0.02, seconds: 0.25 }),
  },
  {
    kind: "dip-in-squat-jump",
    fault: "a dip of 10 % before the rise",
    nearMiss: "a dip of 3 %",
    bad: (seed) => squat(seed, { weightFraction: 0.1, seconds: 0.3 }),
    near: (seed) => squat(seed, { weightFraction: 0.03, seconds: 0.3 }),
  },
  {
    kind: "jump-called-hops",
    fault: "a single countermovement jump called repeated hops",
    nearMiss: "six hops",
    bad: (seed) => written(jumpOf(seed), saidHops),
    near: (seed) => hops(seed, [0.21, 0.2, 0.19, 0.2, 0.2, 0.21]),
  },
  {
    kind: "hops-few",
    fault: "three hops",
    nearMiss: "five hops",
    bad: (seed) => hops(seed, [0.2, 0.21, 0.2]),
    near: (seed) => hops(seed, [0.2, 0.21, 0.2, 0.2, 0.19]),
  },
  {
    kind: "hops-slow",
    fault: "eight hops whose contacts last 0.30 s, so that none counts",
    nearMiss: "eight hops of 0.22 s",
    bad: (seed) => hops(seed, new Array<number>(8).fill(0.3)),
    near: (seed) => hops(seed, new Array<number>(8).fill(0.22)),
  },
  {
    kind: "leg-swing",
    fault: "the free leg swings before the push by 2 cm",
    nearMiss: "the free leg moves by 3 mm",
    bad: (seed) =>
      written(singleOf(seed, { legSwing: { metres: 0.02, seconds: 0.4, middleSeconds: -0.2 } }), saidSingle),
    near: (seed) =>
      written(singleOf(seed, { legSwing: { metres: 0.003, seconds: 0.4, middleSeconds: -0.2 } }), saidSingle),
  },
  {
    kind: "leg-swing-in-dip",
    fault: "the free leg swings by 3 cm while the force dips, so that it dips twice",
    nearMiss: "it moves by 3 mm",
    bad: (seed) =>
      written(singleOf(seed, { legSwing: { metres: 0.03, seconds: 0.4, middleSeconds: 0.5 } }), saidSingle),
    near: (seed) =>
      written(singleOf(seed, { legSwing: { metres: 0.003, seconds: 0.4, middleSeconds: 0.5 } }), saidSingle),
  },
  {
    kind: "other-foot-pushes",
    fault: "the other foot presses 70 N during a single-leg push",
    nearMiss: "it brushes the plate with 12 N",
    bad: (seed) => written(singleOf(seed, { otherFootNewtons: 70 }), saidSingle),
    near: (seed) => written(singleOf(seed, { otherFootNewtons: 12 }), saidSingle),
  },
  {
    kind: "other-foot-in-contact",
    fault: "the other foot presses 90 N during the contact of a single-leg drop jump",
    nearMiss: "it brushes the plate with 12 N",
    bad: (seed) => singleDrop(seed, { otherFootNewtons: 90 }),
    near: (seed) => singleDrop(seed, { otherFootNewtons: 12 }),
  },
  {
    kind: "wrong-limb",
    fault: "the left leg jumps and the right one is stated",
    nearMiss: "the left leg is stated",
    bad: (seed) => written(singleOf(seed), { test: "countermovementJump", limb: "right" }),
    near: (seed) => written(singleOf(seed), saidSingle),
  },
  {
    kind: "two-legs-called-one",
    fault: "both legs jump and one is stated",
    nearMiss: "both are stated",
    bad: (seed) => written(jumpOf(seed), saidSingle),
    near: (seed) => written(jumpOf(seed), saidJump),
  },
  {
    kind: "somebody-steps-on",
    fault: "another person stands on the left plate from mid-file on",
    nearMiss: "somebody leans on it with 4 N",
    bad: (seed) => {
      const jump = jumpOf(seed);
      return written(addStep(jump, 0, jump.truth.events.landingEnd + 1, 350), saidJump);
    },
    near: (seed) => {
      const jump = jumpOf(seed);
      return written(addStep(jump, 0, jump.truth.events.landingEnd + 1, 4), saidJump);
    },
  },
  {
    kind: "starts-moving",
    fault: "the recording begins 0.2 s into the dip",
    nearMiss: "1.2 s of standing before it",
    bad: (seed) => written(jumpOf(seed, { startsAfterFirstMovementSeconds: 0.2 }), saidJump),
    near: (seed) => written(jumpOf(seed, { quietSecondsBefore: 1.2 }), saidJump),
  },
  {
    kind: "weighing-short",
    fault: "0.25 s of standing before and 0.2 s after",
    nearMiss: "1.3 s before and after",
    bad: (seed) => written(jumpOf(seed, { quietSecondsBefore: 0.25, quietSecondsAfter: 0.2 }), saidJump),
    near: (seed) => written(jumpOf(seed, { quietSecondsBefore: 1.3, quietSecondsAfter: 1.3 }), saidJump),
  },
  {
    kind: "lands-beside-plates",
    fault: "the athlete comes down beside the plates",
    nearMiss: "the landing is stiff",
    bad: (seed) => written(jumpOf(seed, { landsBesidePlates: true }), saidJump),
    near: (seed) => written(jumpOf(seed, { landingShape: "stiff" }), saidJump),
  },
  {
    kind: "drop-jump-lands-beside-plates",
    fault: "after the drop jump the athlete comes down beside the plates",
    nearMiss: "steps off after 2.5 s of standing",
    bad: (seed) => written(dropOf(seed, { landsBesidePlates: true }), saidDrop),
    near: (seed) => written(dropOf(seed, { emptySecondsAfter: 1 }), saidDrop),
  },
  {
    kind: "landing-cut",
    fault: "the recording ends 0.12 s after touchdown",
    nearMiss: "it ends after 3.2 s of standing",
    bad: (seed) => written(jumpOf(seed, { endsAfterTouchdownSeconds: 0.12 }), saidJump),
    near: (seed) => written(jumpOf(seed, { quietSecondsAfter: 3.2 }), saidJump),
  },
  {
    kind: "heights-differ",
    fault: "landing with bent knees, 10 cm lower than at take-off",
    nearMiss: "1 cm lower",
    bad: (seed) => written(jumpOf(seed, { touchdownLowerMetres: 0.1 }), saidJump),
    near: (seed) => written(jumpOf(seed, { touchdownLowerMetres: 0.01 }), saidJump),
  },
  {
    kind: "drop-height-off",
    fault: "the body falls 0.18 m from a box of 0.30 m",
    nearMiss: "it falls 0.26 m",
    bad: (seed) => written(dropOf(seed, { dropHeightEffectiveMetres: 0.18 }), saidDrop),
    near: (seed) => written(dropOf(seed, { dropHeightEffectiveMetres: 0.26 }), saidDrop),
  },
  {
    kind: "slow-contact",
    fault: "a two-leg contact of 0.36 s",
    nearMiss: "one of 0.235 s",
    bad: (seed) => written(dropOf(seed, { contactSeconds: 0.36 }), saidDrop),
    near: (seed) => written(dropOf(seed, { contactSeconds: 0.235 }), saidDrop),
  },
  {
    kind: "leading-leg-missing",
    fault: "nobody says which leg led",
    nearMiss: "somebody does",
    bad: (seed) => written(dropOf(seed), { test: "dropJump", limb: "both", dropHeightMetres: 0.3 }),
    near: (seed) => written(dropOf(seed), saidDrop),
  },
  {
    kind: "rail-without-landing",
    fault: "a hand on a rail carries 6 % into the dip, and the recording ends in the landing",
    nearMiss: "the hand carries 0.2 %",
    bad: (seed) => written(jumpOf(seed, { railWeightFraction: 0.06, endsAfterTouchdownSeconds: 0.3 }), saidJump),
    near: (seed) => written(jumpOf(seed, { railWeightFraction: 0.002, endsAfterTouchdownSeconds: 0.3 }), saidJump),
  },
  {
    kind: "rail",
    fault: "a hand on a rail carries 5 % before the jump, and the body mass was entered",
    nearMiss: "the hand carries 0.2 %",
    bad: (seed) => withMass(written(jumpOf(seed, { railWeightFraction: 0.05 }), saidJump), athlete(seed).massKg),
    near: (seed) => withMass(written(jumpOf(seed, { railWeightFraction: 0.002 }), saidJump), athlete(seed).massKg),
  },
];

function singleDrop(seed: number, changes: { readonly otherFootNewtons: number }): FaultyFile {
  const recording = dropOf(seed, {
    limb: "left",
    boxHeightMetres: 0.2,
    dropHeightEffectiveMetres: 0.175,
    jumpHeightMetres: 0.13,
    contactSeconds: 0.31,
    ...changes,
  });
  return written(recording, { test: "dropJump", limb: "left", dropHeightMetres: 0.2, leadingLeg: "left" });
}
