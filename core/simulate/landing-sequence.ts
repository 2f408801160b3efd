import { solveContact } from "./contact-law.ts";
import { solveLanding } from "./landing-law.ts";
import type { Law } from "./law.ts";
import { flightLaw, lawOfPieces } from "./law.ts";
import type { LandingShape } from "./shapes.ts";
import { contactShapes } from "./shapes.ts";

/** What coming down to standing starts from. SI units. */
export interface LandingSequenceWishes {
  readonly shape: LandingShape;
  readonly gravity: number;
  readonly weightNewtons: number;
  /** Negative. */
  readonly touchdownVelocity: number;
  readonly positionAtTouchdown: number;
  readonly touchdownRateNewtonsPerSecond: number;
  /** Straight start of the first contact, in body weights. */
  readonly straightTo: number;
  /** The body leaves the plate once more for this long before it stands. */
  readonly bounceFlightSeconds?: number;
}

/** A landing, or a landing contact, a small flight and a landing. Ends in standing. */
export interface LandingSequence {
  readonly laws: readonly Law[];
  /** Seconds from the first touchdown to zero velocity, and to the first peak of the force. */
  readonly restAfter: number;
  readonly firstPeakAfter: number;
  /** The same within the last law, which ends in standing. */
  readonly lastRestAfter: number;
  readonly lastFirstPeakAfter: number;
}

const bounceContactSeconds = 0.32;
/** A bounce leaves the plate again with bent knees. */
const bounceLowerMetres = 0.12;

/**
 * Solves the way down to standing.
 * @throws RangeError when no plausible force law does it.
 */
export function solveLandingSequence(wishes: LandingSequenceWishes): LandingSequence {
  const { gravity, weightNewtons, positionAtTouchdown } = wishes;
  const ratePerSecond = wishes.touchdownRateNewtonsPerSecond / weightNewtons;
  const land = (touchdownVelocity: number, position: number) =>
    solveLanding({
      shape: wishes.shape,
      gravity,
      touchdownVelocity,
      positionAtTouchdown: position,
      ratePerSecond,
      straightTo: wishes.straightTo,
    });
  if (wishes.bounceFlightSeconds === undefined) {
    const landing = land(wishes.touchdownVelocity, positionAtTouchdown);
    return {
      laws: [lawOfPieces(landing.force, landing.motion)],
      restAfter: landing.landingEnd,
      firstPeakAfter: landing.firstPeakTime,
      lastRestAfter: landing.landingEnd,
      lastFirstPeakAfter: landing.firstPeakTime,
    };
  }
  const up = (gravity * wishes.bounceFlightSeconds) / 2;
  const low = positionAtTouchdown - bounceLowerMetres;
  const contact = solveContact({
    shape: contactShapes["impact-peak"],
    gravity,
    seconds: bounceContactSeconds,
    touchdownVelocity: wishes.touchdownVelocity,
    takeoffVelocity: up,
    positionAtTakeoff: low,
    touchdownLowerMetres: -bounceLowerMetres,
    risePerSecond: ratePerSecond,
    fallPerSecond: Math.min(Math.max(20 * weightNewtons, 8000), 25000) / weightNewtons,
    straightTo: wishes.straightTo,
  });
  const landing = land(-up, low);
  return {
    laws: [
      contact,
      flightLaw(wishes.bounceFlightSeconds, up, low, gravity),
      lawOfPieces(landing.force, landing.motion),
    ],
    restAfter: contact.lowestPosition,
    firstPeakAfter: contact.firstPeakTime,
    lastRestAfter: landing.landingEnd,
    lastFirstPeakAfter: landing.firstPeakTime,
  };
}
