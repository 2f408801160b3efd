import type {
  MovedEvent,
  SessionFindings,
  WeightCosts,
  WeightUnknown,
} from "../../ground/findings/session-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { events } from "./events.ts";
import { tests } from "./tests.ts";

/** What is said of the findings of `core/session`. */
export const findingsOfSession: FindingSentences<SessionFindings> = {
  "mass-changed": ({ massKg, earlierKg, earlierFrom, earlierDate, days }) => {
    const change = massKg / earlierKg - 1;
    return {
      message: `Body mass is ${massKg.toFixed(1)} kg, ${Math.abs(100 * change).toFixed(1)} % ${change < 0 ? "below" : "above"} the ${earlierKg.toFixed(1)} kg ${earlierFrom} ${days} days before (${earlierDate}).`,
      action:
        "Ask whether these are this athlete's recordings and whether the mass changed so much; check force unit and plates.",
    };
  },
  "starts-moving/onset": () => ({
    message: "The recording starts in mid-movement: force never was at body weight before the movement.",
    action: "Start the recording two seconds before the jump.",
  }),
  "starts-moving/weight": ({ takeoffSeconds, landed, costs }) => ({
    message: `Nobody stands still before the jump at ${secondsText(takeoffSeconds)}${landed ? " or long enough after its landing" : ""}, ${costWords[costs]}.`,
    action: "Record two seconds of quiet standing before the jump, or give the body mass.",
  }),
  "starts-moving/mid-movement": ({ takeoffSeconds }) => ({
    message: `Nobody stands still before the jump at ${secondsText(takeoffSeconds)}: the recording starts in mid-movement, so nothing is counted from the first movement on.`,
    action: "Start the recording two seconds before the jump.",
  }),
  "other-foot-touching/weight": ({ landingSeconds, costs, notPooled }) => ({
    message: `The other foot carries load in the standing after the landing at ${secondsText(landingSeconds)}, and ${notPooled === undefined ? "no other trial of the session bears that weight out" : `no other trial may bear that weight out, because ${notPooled}`}, ${costWords[costs]}.`,
    action: "Keep the other foot off its plate until the end, or give the body mass.",
  }),
  "no-quiet-standing/weight": (figures) => ({
    message: `Nobody stands still after the landing at ${secondsText(figures.landingSeconds)}, and ${untold(figures)}.`,
    action: standAfter,
  }),
  "landing-off-plate/weight": (figures) => ({
    message: `No landing on the plate follows, and ${untold(figures)}.`,
    action: standAfter,
  }),
  "no-quiet-standing/velocity": ({ landingSeconds }) => ({
    message: `Nobody stands still after the landing at ${secondsText(landingSeconds)}, so its velocity is unknown.`,
    action: "Have the athlete stand still for two seconds after the next landing.",
  }),
  "landing-off-plate/velocity": ({ takeoffSeconds }) => ({
    message: `No landing on the plate follows the take-off at ${secondsText(takeoffSeconds)}, and no quiet standing gives a velocity.`,
    action: "Repeat the jump with a landing on the plate, and stand still after it.",
  }),
  "event-not-found": ({ missing, seconds, test }) => ({
    message: `No ${missing} is found near ${secondsText(seconds)}.`,
    action: `Check that this trial is what it is called: ${tests.label(test)}.`,
  }),
  "session-entry-unused/edit": (figures) => ({
    message: `The ${eventText(figures)} moved to ${fineSeconds(figures.wantedSeconds)} ${figures.isNoEvent ? "is no event of this trial" : "was moved again later"}; this edit was not used.`,
    action: "Remove the edit.",
  }),
  "event-moved": (figures) => {
    const [wanted, stands] = [fineSeconds(figures.wantedSeconds), fineSeconds(figures.standsSeconds)];
    return {
      message:
        stands === wanted
          ? `The ${eventText(figures)} was moved by hand to ${stands}.`
          : `The ${eventText(figures)} was moved by hand to ${wanted}, beyond its neighbours; it stands at ${stands}.`,
      action: "Reset it to the detected place if this was not meant.",
    };
  },
  "weight-implausible": ({ massKg }) => ({
    message: `The standing load would be an athlete of ${massKg.toFixed(0)} kg, so the unit of force or its scale is wrong.`,
    action: "Check the unit of the force columns and state it.",
  }),
  "recording-repeated": ({ first }) => ({
    message: `This is the same recording as ${first}, byte for byte; it counts once.`,
    action: "Remove the copy, or look for the recording that should stand here.",
  }),
  "several-athletes": ({ lightestKg, heaviestKg, ownKg }) => ({
    message: `Athletes who stood before and after their jumps in this file weigh from ${lightestKg.toFixed(1)} kg to ${heaviestKg.toFixed(1)} kg${ownKg === undefined ? "" : `; this one ${ownKg.toFixed(1)} kg`}: no one person weighs both, so more than one jumped.`,
    action:
      "State the body mass of the athlete this session is about, and only jumps of that mass are used; or record each athlete in a file of their own.",
  }),
  "unreadable/file": ({ reason }) => ({
    message: `The file could not be read because it ${reason}.`,
    action: "Check that the file is there and may be read, then import it again.",
  }),
  "unreadable/changed": () => ({
    message: "The file was changed or removed while the session was being analysed.",
    action: "Analyse the session again when nothing is written there any more.",
  }),
  "session-unreadable/file": ({ reason }) => ({
    message: `session.json was not read because it ${reason}.`,
    action: "Make the file readable, or state what it says another way.",
  }),
  "heights-contradict": ({ byImpulseMetres, byFlightMetres }) => {
    const why =
      byImpulseMetres > byFlightMetres
        ? "nobody lands that much higher than one leaves, so the weight is too small (a hand on a rail, a foot beside the plate, another person) or force was added before take-off"
        : "no landing is that low, so the weight is too large or a part of the force before take-off is missing";
    return {
      message: `Jump height is ${(100 * byImpulseMetres).toFixed(1)} cm by impulse and ${(100 * byFlightMetres).toFixed(1)} cm by flight time: ${why}. What rests on weight or velocity is left out.`,
      action: "Look at the standing before the jump and at the force up to take-off; exclude the trial, or repeat it.",
    };
  },
  "test-contradicts/two-legs": () => ({
    message: "The trial is called a two-leg jump, but only one plate carried the push.",
    action: "State the limb that jumped, or check the other plate.",
  }),
  "test-contradicts/one-leg": ({ limb }) => ({
    message: `The trial is called a single-leg jump (${limb}), but both plates carried the push.`,
    action: "State the limb as both, or repeat the jump on one leg.",
  }),
};

const costWords: Readonly<Record<WeightCosts, string>> = {
  everything: "so body weight is unknown",
  "what needs weight": "so only what needs no body weight was measured",
};

const standAfter = "Record two seconds of quiet standing after the landing, or give the body mass.";

function untold({ costs, notPooled }: WeightUnknown): string {
  const others =
    notPooled === undefined
      ? "no other trial of the session tells the body weight"
      : `no other trial may tell the body weight, because ${notPooled}`;
  return `${others}, ${costWords[costs]}`;
}

function eventText({ name, contactIndex }: MovedEvent): string {
  return `${events.label(name)}${contactIndex === undefined ? "" : ` of contact ${contactIndex}`}`;
}

function secondsText(seconds: number): string {
  return `${seconds.toFixed(2)} s`;
}

function fineSeconds(seconds: number): string {
  return `${seconds.toFixed(4)} s`;
}
