import type { LandingFindings } from "../../ground/findings/landing-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { inPlateWords } from "./plate-words.ts";

/** What is said of flights and landings. */
export const findingsOfLandings: FindingSentences<LandingFindings> = {
  "landing-off-plate/no-landing": ({ takeoffSeconds }) => ({
    message: `No landing on the plate follows the take-off at ${takeoffSeconds.toFixed(2)} s.`,
    action: "Repeat the jump with a landing on the plate if flight time or landing are wanted.",
  }),
  "event-not-found/clipped-landing": () => ({
    message:
      "Force beyond the plate's range is missing from the landing, so velocity does not return to zero after touchdown and the landing has no end.",
    action: "Widen the measuring range of the plate, then record again.",
  }),
  "event-not-found/landing-end": () => ({
    message:
      "Velocity does not return to zero after touchdown although the recording goes on, so the landing has no end.",
    action: "Look at the weight and at the events of this trial.",
  }),
  "landing-short/cut-short": ({ seconds }) => ({
    message: `The recording ends ${seconds.toFixed(2)} s after touchdown, before the landing is over.`,
    action: "Keep recording for two seconds of quiet standing after the landing.",
  }),
  "no-first-peak": () => ({
    message: "The landing has no first peak of at least body weight, so it has no loading rate.",
    action: "Nothing needs to be done.",
  }),
  "landing-short/stabilisation": ({ seconds, neededSeconds }) => ({
    message: `The recording ends ${seconds.toFixed(1)} s after touchdown; a time to stabilisation needs ${neededSeconds} s.`,
    action: "Keep recording longer if this measure is wanted.",
  }),
  "landing-restless": () => ({
    message:
      "Force never stays within 5 % of body weight for a second after the landing, so there is no time to stabilisation.",
    action: "Look at the standing after the landing.",
  }),
  "first-peaks-differ": ({ earlySeconds, lateSeconds }) => ({
    message: `The first landing peak comes ${milliseconds(earlySeconds)} after touchdown on one plate and ${milliseconds(lateSeconds)} on the other: one limb has an early peak that the other lacks, so their loading rates are of different kinds and are left out.`,
    action: "Compare the curves of the two plates; the loading rate of the whole body stands.",
  }),
  "landing-other-plate": ({ limb, pushPlate, landingPlate, seconds }) => ({
    message: `The push is on ${inPlateWords(pushPlate)} alone, the landing at ${seconds.toFixed(2)} s on ${inPlateWords(landingPlate)} alone: the athlete landed on the other leg, or the two columns changed places in the flight. Landing measures of the ${limb} leg are left out.`,
    action:
      "Look at how the athlete landed; if it was on the same leg, the columns are not to be trusted: exclude the trial.",
  }),
  "bounce-after-landing": ({ seconds }) => ({
    message: `The athlete leaves the plate again for ${seconds.toFixed(2)} s after the landing; this is taken as a bounce, not a jump.`,
    action: "Nothing needs to be done unless the landing is of interest.",
  }),
  "several-flights": ({ flightSeconds }) => {
    const times = flightSeconds.map((each) => each.toFixed(2)).join(", ");
    const isOne = flightSeconds.length === 1;
    const follow = isOne
      ? `A second flight of ${times} s follows`
      : `${flightSeconds.length} more flights of ${times} s follow`;
    return {
      message: `${follow} without quiet standing in between; the first one was analysed.`,
      action: isOne
        ? "Check that this is one jump; record jumps apart, with quiet standing between them."
        : "Call the trial repeated hops if it is a bout of hops; record jumps apart, with quiet standing between them.",
    };
  },
};

function milliseconds(seconds: number): string {
  return `${(1000 * seconds).toFixed(0)}\u00a0ms`;
}
