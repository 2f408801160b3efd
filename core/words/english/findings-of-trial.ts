import type { AgainstTest, TrialFindings } from "../../ground/findings/trial-findings.ts";
import type { NotOffered, RecognisedTest } from "../../ground/recognised-test.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { findingsOfSignal } from "./findings-of-signal.ts";
import { recognition } from "./recognition.ts";
import { tests } from "./tests.ts";

/** What is said of the findings of `core/trial`. */
export const findingsOfTrial: FindingSentences<TrialFindings> = {
  ...findingsOfSignal,
  "test-not-stated": ({ recognised }) => ({
    message: `Nothing says which jump test this is${recognised === undefined ? "" : `; ${lookOfTrace(recognised)}`}.`,
    action: "Choose the test.",
  }),
  "limb-not-stated": () => ({
    message: "One plate does not tell which leg jumped, and nothing else says it.",
    action: "Choose the limb.",
  }),
  "test-from-name": ({ test, limb }) => {
    const taken = [...(test === undefined ? [] : [tests.label(test)]), ...(limb === undefined ? [] : [`limb ${limb}`])];
    return {
      message: `Taken from the file name: ${taken.join(", ")}.`,
      action: "State test and limb if the file name is wrong.",
    };
  },
  "test-contradicts/trace": ({ test, against, recognised }) => ({
    message: `The trial is called a ${tests.label(test)}, but ${shown(against)}.`,
    action: `The trace looks like ${tests.withArticle(recognised.test)}: ${recognition(recognised)}. State the test if that is right.`,
  }),
  "load-changes": ({ newtons, fromSeconds, toSeconds, weighedNewtons, weighedFromSeconds, weighedToSeconds }) => ({
    message: `The plates carry a steady ${newtons.toFixed(0)} N from ${span(fromSeconds, toSeconds)}, ${Math.abs(newtons - weighedNewtons).toFixed(0)} N ${newtons / weighedNewtons - 1 > 0 ? "more" : "less"} than the ${weighedNewtons.toFixed(0)} N the athlete was weighed at from ${span(weighedFromSeconds, weighedToSeconds)}: a hand on a rail, another person or an object on a plate, a foot beside it, or a plate zeroed meanwhile.`,
    action: "Find out which of the two is the athlete alone; exclude the trial if it was weighed in the other.",
  }),
  "no-quiet-standing/recording": ({ seconds }) => ({
    message: `Nobody stands still on the plate in these ${seconds.toFixed(1)} s of recording.`,
    action: "Check the force unit and the columns; record two seconds of quiet standing before the jump.",
  }),
  "no-landing": ({ seconds }) => ({
    message: `Nobody lands on the empty plate in these ${seconds.toFixed(1)} s of recording.`,
    action: "Start the recording while the plate is empty, or leave this recording out.",
  }),
  "no-takeoff/never": ({ seconds }) => ({
    message: `The plate is never left in these ${seconds.toFixed(1)} s of recording, so there is no jump.`,
    action: jumpAgainOrLeaveOut,
  }),
  "no-takeoff/step": ({ seconds, steadyNewtons }) => ({
    message: `The plate empties at ${seconds.toFixed(2)} s, but not after a push that would throw the athlete up: beside the ${steadyNewtons.toFixed(0)} N of the steadiest load it looks like a step off the plate, not like a jump.`,
    action: jumpAgainOrLeaveOut,
  }),
  "broken-off/only": ({ fromSeconds, toSeconds }) => ({
    message: neverLeaves(fromSeconds, toSeconds),
    action: "Record the jump again, or leave this recording out.",
  }),
  "broken-off/before-jump": ({ fromSeconds, toSeconds }) => ({
    message: neverLeaves(fromSeconds, toSeconds),
    action: "Nothing needs to be done if the athlete broke off.",
  }),
  "weight-implausible/light": ({ newtons, massKg, leastNewtons, mostNewtons }) => ({
    message: `The load at rest is ${newtons.toPrecision(2)}, which in newtons would be an athlete of ${massKg.toPrecision(2)} kg; a person weighs ${leastNewtons.toFixed(0)} to ${mostNewtons.toFixed(0)} N. These figures are not newtons: kilonewtons, volts, or another scale.`,
    action: "Find the unit of the force columns and state it, or export the recording in newtons.",
  }),
};

const jumpAgainOrLeaveOut = "Record the jump again, with quiet standing before it, or leave this recording out.";

function span(fromSeconds: number, toSeconds: number): string {
  return `${fromSeconds.toFixed(2)} s to ${toSeconds.toFixed(2)} s`;
}

function neverLeaves(fromSeconds: number, toSeconds: number): string {
  return `A movement from ${span(fromSeconds, toSeconds)} dips and rises but never leaves the plate: it is not counted as a jump.`;
}

function lookOfTrace(recognised: RecognisedTest | NotOffered): string {
  const look =
    recognised.test === undefined ? "is offered as none" : `looks like ${tests.withArticle(recognised.test)}`;
  return `the trace ${look}: ${recognition(recognised)}`;
}

function shown(against: AgainstTest): string {
  switch (against.shows) {
    case "athlete on the plate":
      return "the athlete is on the plate before the contact, so nobody drops onto it";
    case "no flight":
      return "no flight follows the contact with the plate";
    case "empty plate":
      return "the plate is empty before the contact";
    case "no dip":
      return `force never dips by ${Math.round(100 * against.weightFraction)} % of body weight before the push`;
    case "another jump":
      return "the athlete jumps again after the landing";
    case "no flight after a contact":
      return "no contact is followed by another flight";
    case "one flight":
      return "there is only one flight, so no hop follows another";
  }
}
