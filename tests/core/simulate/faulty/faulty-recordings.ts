import {
  addNoise,
  addSpikes,
  addStep,
  cutRecording,
  deadenPlate,
  dropOutPlate,
  exchangePlatesFrom,
  holdSamples,
  joinRecordings,
  limitForce,
  loseSamples,
  mixPlates,
  repeatSamples,
  scaleForce,
  smoothForce,
  turnSignFrom,
} from "../../../../core/simulate/recording-faults.ts";
import type { FaultyKind } from "./faulty-trial.ts";
import {
  athlete,
  dropOf,
  jumpOf,
  saidDrop,
  saidJump,
  saidSingle,
  singleOf,
  withLines,
  withMass,
  written,
} from "./faulty-trial.ts";

/** What plates, cables, software and exporting did wrong. */
export const faultyRecordings: readonly FaultyKind[] = [
  {
    kind: "sign-turned-in-mid-file",
    fault: "force has the other sign from the flight on",
    nearMiss: "force has the other sign throughout",
    bad: (seed) => {
      const jump = jumpOf(seed);
      return written(turnSignFrom(jump, jump.truth.events.takeoff + 0.1), saidJump);
    },
    near: (seed) => written(jumpOf(seed, { signTurned: true }), saidJump),
  },
  {
    kind: "sign-turned-after-landing",
    fault: "force has the other sign from 1 s after the landing on",
    nearMiss: "nothing is turned",
    bad: (seed) => {
      const jump = jumpOf(seed);
      return written(turnSignFrom(jump, jump.truth.events.landingEnd + 1), saidJump);
    },
    near: (seed) => written(jumpOf(seed), saidJump),
  },
  {
    kind: "spikes",
    fault: "single samples are wrong by 500 N in standing, push and landing",
    nearMiss: "single samples are wrong by 6 N",
    bad: (seed) => spiked(seed, 500),
    near: (seed) => spiked(seed, 6),
  },
  {
    kind: "spikes-in-drop-contact",
    fault: "a single sample of the contact is wrong by 900 N",
    nearMiss: "it is wrong by 8 N",
    bad: (seed) => spikedDrop(seed, 900),
    near: (seed) => spikedDrop(seed, 8),
  },
  {
    kind: "dead-plate",
    fault: "the left plate shows 0 throughout",
    nearMiss: "the left leg carries 35 %",
    bad: (seed) => written(deadenPlate(jumpOf(seed), 0, 0), saidJump),
    near: (seed) =>
      written(
        jumpOf(seed, { rightShares: { standing: 0.65, braking: 0.65, propulsion: 0.65, landing: 0.65 } }),
        saidJump,
      ),
  },
  {
    kind: "plate-dies",
    fault: "the left plate shows 0 from the lowest position on",
    nearMiss: "it dies 1.5 s after the landing",
    bad: (seed) => {
      const jump = jumpOf(seed);
      return written(deadenPlate(jump, 0, jump.truth.events.lowestPosition), saidJump);
    },
    near: (seed) => {
      const jump = jumpOf(seed, { quietSecondsAfter: 3 });
      return written(cutRecording(jump, 0, jump.truth.events.standingAgain + 1.5), saidJump);
    },
  },
  {
    kind: "plate-dies-in-drop-jump",
    fault: "the right plate shows 0 from the flight on",
    nearMiss: "the right leg carries 38 % of the landing",
    bad: (seed) => {
      const jump = dropOf(seed);
      return written(deadenPlate(jump, 1, jump.truth.events.takeoff + 0.05), saidDrop);
    },
    near: (seed) =>
      written(
        dropOf(seed, { rightShares: { standing: 0.45, braking: 0.47, propulsion: 0.48, landing: 0.38 } }),
        saidDrop,
      ),
  },
  {
    kind: "gap-in-push",
    fault: "60 samples of the push are missing",
    nearMiss: "the recording was cut to begin later",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const line = Math.round(jump.truth.events.lowestPosition * 1000);
      return withLines(written(jump, saidJump), (lines) => [...lines.slice(0, line), ...lines.slice(line + 60)]);
    },
    near: (seed) => {
      const file = written(jumpOf(seed), saidJump);
      return withLines(file, (lines) => [...lines.slice(0, 1), ...lines.slice(501)]);
    },
  },
  {
    kind: "gap-in-contact",
    fault: "15 samples of the contact of a drop jump are missing",
    nearMiss: "none is",
    bad: (seed) => {
      const jump = dropOf(seed);
      const line = Math.round(jump.truth.events.lowestPosition * 1000);
      return withLines(written(jump, saidDrop), (lines) => [...lines.slice(0, line), ...lines.slice(line + 15)]);
    },
    near: (seed) => written(dropOf(seed), saidDrop),
  },
  {
    kind: "samples-lost-as-zero",
    fault: "all plates read 0 for 0.03 s of the push",
    nearMiss: "all plates read 0 in flight, as they should",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.lowestPosition + 0.04;
      return written(loseSamples(jump, from, from + 0.03), saidJump);
    },
    near: (seed) => written(jumpOf(seed, { plateNoiseNewtons: 0 }), saidJump),
  },
  {
    kind: "samples-held",
    fault: "all plates repeat one value for 0.08 s of the push",
    nearMiss: "for 2 samples",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.lowestPosition - 0.04;
      return written(holdSamples(jump, from, from + 0.08), saidJump);
    },
    near: (seed) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.lowestPosition - 0.04;
      return written(holdSamples(jump, from, from + 0.002), saidJump);
    },
  },
  {
    kind: "cells-not-numbers",
    fault: "three cells of the push hold no number",
    nearMiss: "they hold numbers",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const line = Math.round(jump.truth.events.lowestPosition * 1000);
      return withLines(written(jump, saidJump), (lines) =>
        lines.map((each, index) => (index >= line && index < line + 3 ? `${each.split(",")[0]},NaN,NaN` : each)),
      );
    },
    near: (seed) => written(jumpOf(seed), saidJump),
  },
  {
    kind: "volts",
    fault: "the columns are in volts",
    nearMiss: "they are in kilonewtons",
    bad: (seed) => {
      const file = written(scaleForce(jumpOf(seed), 1 / 200), saidJump);
      return withLines(file, ([header = "", ...lines]) => [header.replaceAll("(N)", "(V)"), ...lines]);
    },
    near: (seed) => written(jumpOf(seed), saidJump, { unit: "kN" }),
  },
  {
    kind: "volts-called-newtons",
    fault: "the columns are in volts and the header says newtons",
    nearMiss: "they are in newtons",
    bad: (seed) => written(scaleForce(jumpOf(seed), 1 / 200), saidJump),
    near: (seed) => written(jumpOf(seed), saidJump),
  },
  {
    kind: "kilonewtons-called-newtons",
    fault: "the columns are in kilonewtons and the header says newtons",
    nearMiss: "the header says kilonewtons",
    bad: (seed) => {
      const file = written(jumpOf(seed), saidJump, { unit: "kN" });
      return withLines(file, ([header = "", ...lines]) => [header.replaceAll("(kN)", "(N)"), ...lines]);
    },
    near: (seed) => written(jumpOf(seed), saidJump, { unit: "kN" }),
  },
  {
    kind: "rates-conflict",
    fault: "a line above the header says 500 samples a second, the time column 1000",
    nearMiss: "both say 1000",
    bad: (seed) => written(jumpOf(seed), saidJump, { preamble: ["Sampling rate: 500 Hz"] }),
    near: (seed) => written(jumpOf(seed), saidJump, { preamble: ["Sampling rate: 1000 Hz"] }),
  },
  {
    kind: "time-turns-back",
    fault: "time begins anew in mid-file: two files glued together",
    nearMiss: "one file",
    bad: (seed) => {
      const first = written(jumpOf(seed), saidJump);
      const second = written(jumpOf(seed + 2), saidJump)
        .text.split("\n")
        .slice(1);
      return withLines(first, (lines) => [...lines.slice(0, -1), ...second]);
    },
    near: (seed) => written(jumpOf(seed), saidJump),
  },
  {
    kind: "other-recording-appended",
    fault: "the recording of a much heavier athlete follows in the same file",
    nearMiss: "a second recording of the same athlete follows",
    bad: (seed) => {
      const light = jumpOf(seed, { massKg: 55, emptySecondsAfter: 1 });
      const heavy = jumpOf(seed + 2, { massKg: 95, emptySecondsBefore: 1 });
      return written(joinRecordings([light, heavy]), saidJump);
    },
    near: (seed) => {
      const first = jumpOf(seed, { massKg: 70, emptySecondsAfter: 1 });
      return written(joinRecordings([first, jumpOf(seed + 2, { massKg: 70, emptySecondsBefore: 1 })]), saidJump);
    },
  },
  {
    kind: "rate-100",
    fault: "100 samples a second",
    nearMiss: "500 samples a second",
    bad: (seed) => written(jumpOf(seed, { rateHz: 100 }), saidJump),
    near: (seed) => written(jumpOf(seed, { rateHz: 500 }), saidJump),
  },
  {
    kind: "rate-raised-by-repeating",
    fault: "100 samples a second written as 1000: each stands ten times",
    nearMiss: "each stands once",
    bad: (seed) => written(repeatSamples(jumpOf(seed), 10), saidJump),
    near: (seed) => written(repeatSamples(jumpOf(seed), 1), saidJump),
  },
  {
    kind: "smoothed",
    fault: "somebody averaged over 0.08 s before exporting",
    nearMiss: "over 2 ms",
    bad: (seed) => written(smoothForce(jumpOf(seed), 0.08), saidJump),
    near: (seed) => written(smoothForce(jumpOf(seed), 0.002), saidJump),
  },
  {
    kind: "clipped",
    fault: "the range ends 15 % below the largest force of the push",
    nearMiss: "it ends above the landing peak",
    bad: (seed) => {
      const { phases } = jumpOf(seed, { plates: "one" }).truth;
      const clipNewtons = Math.round(0.85 * Math.max(phases.braking.peakForce.both, phases.propulsion.peakForce.both));
      return written(jumpOf(seed, { plates: "one", clipNewtons }), saidJump);
    },
    near: (seed) => written(jumpOf(seed, { plates: "one", clipNewtons: 20000 }), saidJump),
  },
  {
    kind: "range-exceeded-beneath-noise",
    fault: "the left amplifier's range ends 15 % below the largest force of its push, and noise comes on behind it",
    nearMiss: "it ends above everything",
    bad: (seed) => written(limited(seed, 0.85), saidJump),
    near: (seed) => written(limited(seed, 20), saidJump),
  },
  {
    kind: "one-plate-turned",
    fault: "the other foot presses 50 N in a single-leg push, on a plate whose sign is turned",
    nearMiss: "the sign of both plates is turned, and both carry a leg",
    bad: (seed) => written(scaleForce(singleOf(seed, { otherFootNewtons: 50 }), -1, 1), saidSingle),
    near: (seed) => written(scaleForce(jumpOf(seed), -1), saidJump),
  },
  {
    kind: "two-athletes-in-one-file",
    fault: "after the athlete another one, 6 % heavier, steps onto the plates and jumps",
    nearMiss: "the same athlete jumps twice",
    bad: (seed) => written(twoInTurn(seed, 1.06), saidJump),
    near: (seed) => written(twoInTurn(seed, 1), saidJump),
  },
  {
    kind: "plate-drops-out",
    fault: "the left plate has no contact for 0.12 s in the push and reads its noise",
    nearMiss: "it has none for 0.12 s in the flight",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.lowestPosition - 0.06;
      return written(dropOutPlate(jump, 0, from, from + 0.12, { seed, newtons: 1.2 }), saidJump);
    },
    near: (seed) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.takeoff + 0.08;
      return written(dropOutPlate(jump, 0, from, from + 0.12, { seed, newtons: 1.2 }), saidJump);
    },
  },
  {
    kind: "offset",
    fault: "the left plate reads 40 N while it is empty",
    nearMiss: "it reads 1 N",
    bad: (seed) => written(jumpOf(seed, { emptySecondsBefore: 1, plateOffsetsNewtons: [40, 0] }), saidJump),
    near: (seed) => written(jumpOf(seed, { emptySecondsBefore: 1, plateOffsetsNewtons: [1, 0] }), saidJump),
  },
  {
    kind: "drift",
    fault: "the zero of the left plate creeps by 4 N a second",
    nearMiss: "by 0.02 N a second",
    bad: (seed) => drifting(seed, 4),
    near: (seed) => drifting(seed, 0.02),
  },
  {
    kind: "zeroed-in-mid-file",
    fault: "the left plate jumps by −120 N in the standing before the jump",
    nearMiss: "by 1 N",
    bad: (seed) => written(addStep(jumpOf(seed), 0, 1.2, -120), saidJump),
    near: (seed) => written(addStep(jumpOf(seed), 0, 1.2, -1), saidJump),
  },
  {
    kind: "gain-differs",
    fault: "the left plate shows 15 % too much, and the body mass was entered",
    nearMiss: "it shows 0.1 % too much",
    bad: (seed) => withMass(written(scaleForce(jumpOf(seed), 1.15, 0), saidJump), athlete(seed).massKg),
    near: (seed) => withMass(written(scaleForce(jumpOf(seed), 1.001, 0), saidJump), athlete(seed).massKg),
  },
  {
    kind: "plates-mixed",
    fault: "each plate also shows 10 % of the other in a single-leg jump",
    nearMiss: "0.5 % of the other",
    bad: (seed) => written(mixPlates(singleOf(seed), 0.1), saidSingle),
    near: (seed) => written(mixPlates(singleOf(seed), 0.005), saidSingle),
  },
  {
    kind: "plates-exchanged-in-mid-file",
    fault: "the two columns change places in the flight of a single-leg jump",
    nearMiss: "they stay",
    bad: (seed) => {
      const jump = singleOf(seed);
      return written(exchangePlatesFrom(jump, jump.truth.events.takeoff + 0.1), saidSingle);
    },
    near: (seed) => written(singleOf(seed), saidSingle),
  },
  {
    kind: "hum",
    fault: "mains hum of 60 N",
    nearMiss: "mains hum of 1 N",
    bad: (seed) => written(jumpOf(seed, { hum: { newtons: 60, frequencyHz: 50 } }), saidJump),
    near: (seed) => written(jumpOf(seed, { hum: { newtons: 1, frequencyHz: 50 } }), saidJump),
  },
  {
    kind: "noise",
    fault: "noise with a standard deviation of 60 N on each plate",
    nearMiss: "of 2 N",
    bad: (seed) => written(addNoise(jumpOf(seed), seed, 60), saidJump),
    near: (seed) => written(addNoise(jumpOf(seed), seed, 1.6), saidJump),
  },
  {
    kind: "noise-in-flight",
    fault: "a loose cable: noise of 150 N for 0.15 s about take-off",
    nearMiss: "noise of 150 N in the last 0.2 s of the recording",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const { takeoff } = jump.truth.events;
      return written(addNoise(jump, seed, 150, takeoff - 0.05, takeoff + 0.1), saidJump);
    },
    near: (seed) => {
      const jump = jumpOf(seed);
      const end = jump.sampleCount / jump.rateHz;
      return written(cutRecording(addNoise(jump, seed, 150, end - 0.2), 0, end - 0.2), saidJump);
    },
  },
  {
    kind: "last-line-cut",
    fault: "the file stops in the middle of a line during the landing",
    nearMiss: "it stops after a line during the standing",
    bad: (seed) => {
      const jump = jumpOf(seed);
      const line = Math.round((jump.truth.events.touchdown + 0.1) * 1000);
      const file = withLines(written(jump, saidJump), (lines) => lines.slice(0, line));
      return { ...file, text: file.text.slice(0, -7) };
    },
    near: (seed) => withLines(written(jumpOf(seed), saidJump), (lines) => [...lines.slice(0, -600), ""]),
  },
  {
    kind: "empty-plates",
    fault: "nobody is on the plates",
    nearMiss: "somebody is",
    bad: (seed) => written(addNoise(scaleForce(jumpOf(seed), 0), seed, 1.2), saidJump),
    near: (seed) => written(jumpOf(seed), saidJump),
  },
];

function spiked(seed: number, newtons: number) {
  const jump = jumpOf(seed);
  const { lowestPosition, touchdown } = jump.truth.events;
  const spikes = [
    { at: 0.9, newtons },
    { at: lowestPosition + 0.05, newtons: -newtons },
    { at: touchdown + 0.6, newtons },
  ];
  return written(addSpikes(jump, 0, spikes), saidJump);
}

function spikedDrop(seed: number, newtons: number) {
  const jump = dropOf(seed);
  return written(addSpikes(jump, 1, [{ at: jump.truth.events.lowestPosition + 0.02, newtons }]), saidDrop);
}

/** The left plate without noise up to a part of the largest force of its push, noise behind that. */
function limited(seed: number, part: number) {
  const jump = jumpOf(seed, { plateNoiseNewtons: 0 });
  const push = jump.plates[0]!.force.subarray(0, Math.round(jump.truth.events.takeoff * jump.rateHz));
  return addNoise(limitForce(jump, part * Math.max(...push), 0), seed, 1.2);
}

/** Two jumps one after the other, the second of an athlete of so many times the mass; between them nobody is on the plates. */
function twoInTurn(seed: number, times: number) {
  const apart = { emptySecondsBefore: 1, emptySecondsAfter: 1 };
  const heavier = { ...apart, massKg: times * athlete(seed).massKg, jumpHeightMetres: 0.24, seed: seed + 2 };
  return joinRecordings([jumpOf(seed, apart), jumpOf(seed, heavier)]);
}

function drifting(seed: number, newtonsPerSecond: number) {
  const empty = { emptySecondsBefore: 1.2, emptySecondsAfter: 1.2 };
  return written(jumpOf(seed, { ...empty, plateDriftsNewtonsPerSecond: [newtonsPerSecond, 0] }), saidJump);
}
