import type { EventsFindings } from "../../ground/findings/events-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { tests } from "./tests.ts";

const nextTime: Readonly<Record<EventsFindings["weighing-restless"]["quiet"], string>> = {
  "before the jump": "before the next jump",
  "after the landing": "after the next landing",
};

/** What is said of the findings of `core/events`. */
export const findingsOfEvents: FindingSentences<EventsFindings> = {
  "held-while-weighed": ({ test, beforeNewtons, afterNewtons, heightByWeightMetres, heightByFlightMetres }) => ({
    message: `Standing before the jump carries ${beforeNewtons.toFixed(0)} N and standing after it ${afterNewtons.toFixed(0)} N: a hand on a rail, or something else, held ${(afterNewtons - beforeNewtons).toFixed(0)} N until the athlete moved. By the standing before, the jump would be ${(100 * heightByWeightMetres).toFixed(0)} cm high; the flight tells ${(100 * heightByFlightMetres).toFixed(0)} cm. Weight and velocity are taken from the standing after, and nothing is counted from the first movement on.`,
    action: `Have the athlete stand free, ${tests.armsAtRest(test)}, before the next jump.`,
  }),
  "weighing-short/too-short": ({ quiet, seconds, uncertaintyFraction }) => ({
    message: `Quiet standing ${quiet} lasts only ${seconds.toFixed(2)} s: body weight is uncertain by ${(100 * uncertaintyFraction).toFixed(2)} %, and every number that rests on it is coarse.`,
    action: `Record again with two seconds of quiet standing ${quiet}; do not decide on this trial.`,
  }),
  "weighing-short/short": ({ quiet, seconds, wantedSeconds, uncertaintyFraction }) => ({
    message: `Quiet standing ${quiet} lasts ${seconds.toFixed(2)} s instead of ${wantedSeconds.toFixed(1)} s: body weight is uncertain by ${(100 * uncertaintyFraction).toFixed(2)} %.`,
    action: `Have the athlete stand still for two seconds ${nextTime[quiet]}.`,
  }),
  "weighing-restless": ({ test, quiet, deviationNewtons }) => ({
    message: `Force varies by ${deviationNewtons.toFixed(0)} N (standard deviation) while the athlete is weighed.`,
    action: `Have the athlete stand still, ${tests.armsAtRest(test)}, ${nextTime[quiet]}.`,
  }),
};
