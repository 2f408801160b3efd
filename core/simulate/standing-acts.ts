import type { Act } from "./act.ts";
import { restLaw } from "./law.ts";

/** Seconds that stepping on or off takes. */
const stepSeconds = 0.5;

/** Quiet standing on the plates. */
export function standAct(seconds: number): Act<undefined> {
  return { laws: [restLaw(seconds, 0)], plan: () => ({}), describe: () => undefined };
}

/** Empty plates for the seconds, then stepping on. */
export function stepOnAct(emptySeconds: number): Act<undefined> {
  return {
    laws: [restLaw(emptySeconds, 0), restLaw(stepSeconds, 0)],
    plan: ([, at = 0]) => ({ presence: [{ at, seconds: stepSeconds, on: true }] }),
    describe: () => undefined,
  };
}

/** Stepping off, then empty plates for the seconds. */
export function stepOffAct(emptySeconds: number): Act<undefined> {
  return {
    laws: [restLaw(stepSeconds, 0), restLaw(emptySeconds, 0)],
    plan: ([at = 0]) => ({ presence: [{ at, seconds: stepSeconds, on: false }] }),
    describe: () => undefined,
  };
}
