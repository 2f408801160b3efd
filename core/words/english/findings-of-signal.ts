import type { SignalFindings } from "../../ground/findings/signal-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { inPlateWords, plateWordsFirst } from "./plate-words.ts";

const costOfStuck: Readonly<Record<SignalFindings["samples-lost"]["cost"], string>> = {
  velocity: "so no velocity can be made",
  "before weighing": "before the athlete was weighed",
  "in or after landing": "in or after the landing",
};

/** What is said of the force of a recording and of its plates. */
export const findingsOfSignal: FindingSentences<SignalFindings> = {
  "plate-dead": ({ plate, other, newtons, seconds }) => ({
    message: `${plateWordsFirst(plate)} shows ${newtons.toFixed(1)} N without any change for ${seconds.toFixed(2)} s while ${inPlateWords(other)} carries the athlete: the plate went dead, or no foot was on it.`,
    action: "Check the plate, its cable and amplifier; record the trial again with a foot on each plate.",
  }),
  "plates-equal": ({ first, second, samples }) => ({
    message: `${plateWordsFirst(first)} and ${inPlateWords(second)} show the same force in every one of ${samples} samples, noise included: one plate was exported twice, or one force was divided in two.`,
    action: "Export both plates again; where one force was divided in two, state the columns as one total.",
  }),
  "plate-turned": ({ plate, other, downNewtons, otherUpNewtons }) => ({
    message: `${plateWordsFirst(plate)} shows ${downNewtons.toFixed(0)} N downwards and never carries load, while ${inPlateWords(other)} carries up to ${otherUpNewtons.toFixed(0)} N: nobody pulls on a plate, so the sign of ${inPlateWords(plate)} is turned.`,
    action:
      "Turn the sign of that plate in the program that exported it, or leave its column out, and import the file again.",
  }),
  "plate-offset": ({ plate, newtons }) => ({
    message: `${plateWordsFirst(plate)} shows ${newtons.toFixed(1)} N while nobody stands on it; this zero was removed.`,
    action: "Zero the plates before the next recording.",
  }),
  "plate-drift": ({ plate, newtons, fromSeconds, toSeconds }) => ({
    message: `The zero of ${inPlateWords(plate)} moves by ${newtons.toFixed(1)} N from ${fromSeconds.toFixed(1)} s to ${toSeconds.toFixed(1)} s; this drift was removed as a straight line.`,
    action: "Let the plates warm up and zero them before the next recording.",
  }),
  "plate-noisy/recording": ({ newtons, humHz }) => ({
    message: `Force varies by ${newtons.toFixed(0)} N (standard deviation) even where it is steadiest: ${humHz === undefined ? "noise" : `hum of ${humHz} Hz, as the mains make it`}. Neither an empty plate nor quiet standing can be told in it.`,
    action: "Look for hum, vibration, a loose cable or a loose plate; a plate at rest varies by one or two newtons.",
  }),
  "sign-changes": ({ loadNewtons, lowestNewtons, seconds }) => ({
    message: `Force has both signs: a load of ${loadNewtons.toFixed(0)} N at rest, and ${lowestNewtons.toFixed(0)} N at ${seconds.toFixed(2)} s. Nobody pulls on a plate, so the sign changed in mid-recording, or the plate was zeroed under a load.`,
    action: "Find out what was changed during the recording, and record again.",
  }),
  "rate-not-real": ({ times, realHz, rateHz }) => ({
    message: `Each value stands ${times.toFixed(times < 3 ? 1 : 0)} times in a row where force moves fast: the recording holds about ${realHz.toFixed(0)} values a second, not ${rateHz.toFixed(0)}, and between them force is a staircase.`,
    action: "Export the recording again at the rate it was measured with.",
  }),
  smoothed: ({ footSeconds }) => ({
    message: `Force runs out over ${(1000 * footSeconds).toFixed(0)} ms at take-off where a plate shows a corner, and the empty plate shows no noise from sample to sample: the recording was smoothed before it was exported.`,
    action: "Export the unfiltered force: times, peaks and loading rates of this trial are those of the smoothing.",
  }),
  "samples-lost": ({ plate, newtons, samples, cost }) => ({
    message: `The loaded ${inPlateWords(plate)} falls to ${newtons.toFixed(0)} N from one sample to the next, stays there for ${samples} samples and comes back as suddenly: these samples are missing, ${costOfStuck[cost]}.`,
    action: "Check the cable and the transmission, then record again.",
  }),
  "samples-held": ({ plate, newtons, samples, cost }) => ({
    message: `The loaded ${inPlateWords(plate)} repeats ${newtons.toFixed(1)} N for ${samples} samples, which its own noise forbids: these samples were not measured, ${costOfStuck[cost]}.`,
    action: "Check the transmission and the export, then record again.",
  }),
};
