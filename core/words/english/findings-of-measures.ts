import type { MeasureFindings } from "../../ground/findings/measures-findings.ts";
import { oppositeSide } from "../../ground/limb.ts";
import { countOf } from "../../ground/plain-words.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { findingsOfLandings } from "./findings-of-landings.ts";
import { measures as measureWords } from "./measures.ts";

const widenRange = "Widen the measuring range of the plate, then record again.";

/** What is said of the findings of `core/measures`. */
export const findingsOfMeasure: FindingSentences<MeasureFindings> = {
  ...findingsOfLandings,
  "measure-not-made": ({ measures }) => ({
    message: `The recording does not give these measures: ${measures.map(measureWords.fullLabel).join("; ")}.`,
    action: "Look at the events of this trial.",
  }),
  "clipped/hops": ({ samples }) => ({
    message: `${rangeExceeded(samples)}; the times of the hops do not rest on it.`,
    action: widenRange,
  }),
  "clipped/before-takeoff": ({ samples }) => ({
    message: `${rangeExceeded(samples)} before take-off, so no velocity can be made.`,
    action: widenRange,
  }),
  "clipped/only-landing": ({ samples }) => ({
    message: `${rangeExceeded(samples)} in the landing, so no velocity can be made.`,
    action: widenRange,
  }),
  "clipped/landing": ({ samples }) => ({
    message: `${rangeExceeded(samples)} in the landing, whose measures are left out.`,
    action: widenRange,
  }),
  "heights-differ": ({ byImpulseMetres, byFlightMetres }) => ({
    message: `Jump height is ${(100 * byImpulseMetres).toFixed(1)} cm by impulse and ${(100 * byFlightMetres).toFixed(1)} cm by flight time.`,
    action: "Look at the quiet standing (weight) and at how the athlete landed (bent legs lengthen the flight).",
  }),
  "self-check-broken": ({ partOfPush }) => ({
    message: `Impulses summed from force differ from mass times velocity change by ${partOfPush.toExponential(1)} of the push.`,
    action: "Please report this recording: it shows a mistake in the program.",
  }),
  "slow-contact": ({ seconds, limitSeconds }) => ({
    message: `The contact lasts ${seconds.toFixed(3)} s, above ${limitSeconds.toFixed(3)} s: slow stretch-shortening.`,
    action: "Compare it with trials of the same kind only.",
  }),
  "leading-leg-missing": () => ({
    message:
      "Nothing says which leg stepped off the box first; it lands first and harder, so left and right cannot be compared.",
    action: "State the leading leg, and lead with each leg in turn.",
  }),
  "drop-height-not-stated": () => ({
    message: "Nothing says how high the box is, so the effective drop height is held against nothing.",
    action: "State it.",
  }),
  "drop-height-off": ({ fallenMetres, statedMetres }) => {
    const off = fallenMetres / statedMetres - 1;
    return {
      message: `The athlete fell ${(100 * fallenMetres).toFixed(1)} cm from a box of ${(100 * statedMetres).toFixed(1)} cm: ${Math.abs(100 * off).toFixed(0)} % ${off < 0 ? "less" : "more"}.`,
      action: `Have the athlete step off without ${off < 0 ? "lowering the body" : "jumping up"} first, and check the stated box height.`,
    };
  },
  "leading-leg-contradicted": ({ stated, earlierSeconds, uncertaintySeconds }) => ({
    message: `The ${stated} leg is stated to lead, but the plate called the ${oppositeSide(stated)} foot's is met ${milliseconds(earlierSeconds)} ms before the other (± ${milliseconds(uncertaintySeconds)} ms).`,
    action: "Check which leg stepped off first, and which foot stood on which plate; state what is right.",
  }),
  "hops-few": ({ found, used, wanted, contactLimitSeconds }) => ({
    message: fewHops(found, used, wanted, `a contact below ${Math.round(1000 * contactLimitSeconds)} ms`),
    action: "Record a longer bout, with short contacts, if the athlete may hop again.",
  }),
  "plate-noisy/empty": ({ deviationNewtons }) => ({
    message: `Force varies by ${deviationNewtons.toFixed(1)} N (standard deviation) while nobody is on the plate: take-off and touchdown are coarse, and their uncertainties are large.`,
    action: "Look for hum, vibration or a loose plate; a plate at rest varies by one or two newtons.",
  }),
  "other-foot-touching/trial": ({ mostNewtons, seconds, during }) => ({
    message: `The other foot carried up to ${mostNewtons.toFixed(0)} N for ${seconds.toFixed(2)} s ${during === "landing" ? "in the landing" : "before take-off"}.`,
    action: "Exclude the trial, or repeat it with the other foot off the plate.",
  }),
  "leg-swing": ({ dips }) => ({
    message: `Force dips ${dips} times before take-off: the free leg was swung, or the athlete started twice.`,
    action: "Exclude the trial, or repeat it with the free leg still.",
  }),
  spikes: ({ samples }) => ({
    message: `${samples === 1 ? "One sample stands" : `${samples} samples stand`} alone, far from the force around: a disturbance of the recording.`,
    action:
      "Look at these places; exclude the trial if one lies in the weighing, the push or the landing. Check cables and plugs.",
  }),
  "dip-in-squat-jump": ({ dipFraction, sunkMetres }) => ({
    message: `Before the rise force dips by ${Math.max(0, 100 * dipFraction).toFixed(0)} % of body weight and the body sinks by ${Math.max(0, 100 * sunkMetres).toFixed(1)} cm: a countermovement.`,
    action: "Exclude the trial, or repeat it from a hold of two seconds without dipping.",
  }),
  "velocity-from-flight": ({ course }) => {
    const [before, rests] =
      course === "from standing"
        ? ["before the jump or ", "braking and propulsion"]
        : ["", "effective drop height and turning point"];
    return {
      message: `No quiet standing of the whole athlete ${before}after the landing gives the velocity, so half the flight time does: ${rests} rest on it.`,
      action: "Have the athlete stand still for two seconds after the next landing.",
    };
  },
};

function rangeExceeded(samples: number): string {
  return `Force stays at its largest value for ${samples} samples: the plate's range was exceeded`;
}

function fewHops(found: number, used: number, wanted: number, limit: string): string {
  if (used === 0) return `None of ${countOf(found, "hop")} has ${limit}, so there is no mean.`;
  const seen =
    used === found
      ? `The bout has only ${countOf(found, "hop")}`
      : `Only ${used} of ${found} hops ${used === 1 ? "has" : "have"} ${limit}`;
  return `${seen}; ${wanted} are wanted, and ${used === 1 ? "it stands" : "these stand"} for the bout.`;
}

function milliseconds(seconds: number): string {
  return (1000 * seconds).toFixed(1);
}
