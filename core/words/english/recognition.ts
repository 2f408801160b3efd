import type { NotOffered, RecognisedTest } from "../../ground/recognised-test.ts";
import { tests } from "./tests.ts";

const seconds = (value: number): string => `${value.toFixed(2)} s`;

/** What was seen in a trace, or why it is offered as no test: it completes "looks like a … : …". */
export function recognition(recognised: RecognisedTest | NotOffered): string {
  return recognised.test === undefined ? whyNone(recognised) : traceSeen(recognised);
}

function traceSeen({ trace }: RecognisedTest): string {
  const { before } = trace;
  switch (trace.seen) {
    case "impact":
      return `${before}, an impact, no flight after it`;
    case "flights":
      return `${before}, ${trace.flights} flights without standing between`;
    case "contact":
      return `${before}, contact ${seconds(trace.contactSeconds)}, flight ${seconds(trace.flightSeconds)}`;
    case "dip":
      return `${before}, a dip to ${Math.round(100 * trace.weightFraction)} % of body weight before the push, flight ${seconds(trace.flightSeconds)}`;
    case "no dip":
      return `${before}, no dip before the push, flight ${seconds(trace.flightSeconds)}`;
  }
}

function whyNone({ against }: NotOffered): string {
  switch (against.why) {
    case "empty too long": {
      const most = `${against.mostSeconds.toFixed(1)} s`;
      return `the plate is empty for more than ${most} after a push, longer than people fly (${most} is a height of ${against.heightMetres.toFixed(2)} m)`;
    }
    case "refused":
      return `as ${tests.withArticle(against.test)} it would be refused`;
    case "walked across":
      return "nobody stands still before the plate empties and nobody comes back onto it, as when somebody walks across it";
    case "event missing":
      return `no ${against.missing} of a jump is found near ${seconds(against.seconds)}`;
    case "push unlike flight":
      return `the push gives the body ${against.pushedMetresPerSecond.toFixed(1)} m/s and a flight that long takes ${against.flownMetresPerSecond.toFixed(1)} m/s, so the plate was not left by that push alone`;
    case "step":
      return `the contact carries ${against.meanNewtons.toFixed(0)} N on average, less than the ${against.weightNewtons.toFixed(0)} N the athlete weighs, as a step does`;
  }
}
