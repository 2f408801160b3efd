import type { Body } from "./body.ts";
import { quinticStep, smoothBump } from "./displacement.ts";
import type { JumpOptions, RightShares } from "./options.ts";
import { integrate } from "./quadrature.ts";

/** Force of each foot on its plate in continuous time. The two add up to the body's force. */
export interface LimbForces {
  left(time: number): number;
  right(time: number): number;
  /** Instants of each limb's own loss and making of contact; absent for a limb that does not work. */
  readonly limbTimes: {
    readonly left?: { readonly takeoff: number; readonly touchdown: number };
    readonly right?: { readonly takeoff: number; readonly touchdown: number };
  };
  readonly breaks: readonly number[];
}

/** Shares of a jump whose limbs carry alike. */
const evenShares: RightShares = { standing: 0.5, braking: 0.5, propulsion: 0.5, landing: 0.5 };

const shareEaseSeconds = 0.12;
const longestTakeoffDifference = 0.012;
const longestTouchdownDifference = 0.006;

/** Divides the body's force between the limbs. */
export function divideBetweenLimbs(body: Body, options: JumpOptions): LimbForces {
  return options.limb === "both" ? twoLegForces(body, options) : singleLegForces(body, options, options.limb);
}

/**
 * Two legs: the right share is constant in standing, braking, propulsion and landing and eases between them, braking
 * to propulsion within the first third of propulsion. The propulsion level is solved so that the whole phase has the
 * wanted share of gross impulse, with the earlier limb's departure taken into account.
 * @throws RangeError when the limbs differ by more than 12 ms at take-off or 6 ms at touchdown.
 */
function twoLegForces(body: Body, options: JumpOptions): LimbForces {
  const shares = options.rightShares ?? evenShares;
  const { times } = body;
  const takeoffDifference = options.limbTakeoffDifferenceSeconds ?? 0;
  const touchdownDifference = options.limbTouchdownDifferenceSeconds ?? 0;
  if (Math.abs(takeoffDifference) > longestTakeoffDifference) {
    throw new RangeError(`Limbs cannot leave ${takeoffDifference} s apart.`);
  }
  if (Math.abs(touchdownDifference) > longestTouchdownDifference) {
    throw new RangeError(`Limbs cannot land ${touchdownDifference} s apart.`);
  }
  const brakingEase = Math.min(shareEaseSeconds, times.endOfUnweighting - times.firstMovement);
  const brakingStart = times.endOfUnweighting - brakingEase;
  const propulsionEase = (times.takeoff - times.lowestPosition) / 3;
  const settleSeconds = times.standingAgain - times.landingEnd;
  const shift = options.weightShift;
  const shiftStart = shift === undefined ? 0 : times.firstMovement - shift.endsBeforeSeconds - shift.seconds;

  const shareAt = (time: number, propulsion: number): number => {
    if (time >= times.takeoff) {
      const settled = quinticStep(time, times.landingEnd, settleSeconds)[0];
      return shares.landing + (shares.standing - shares.landing) * settled;
    }
    const braking = quinticStep(time, brakingStart, brakingEase)[0];
    const pushing = quinticStep(time, times.lowestPosition, propulsionEase)[0];
    const shifted = shift === undefined ? 0 : shift.rightShareChange * smoothBump(time, shiftStart, shift.seconds)[0];
    return (
      shares.standing + shifted + (shares.braking - shares.standing) * braking + (propulsion - shares.braking) * pushing
    );
  };

  // The earlier limb falls along a line from the start of the body's own straight fall.
  const lineStart = times.firstMovement + body.push.fallStart;
  const earlyTakeoff = times.takeoff - Math.abs(takeoffDifference);
  const rightLeavesFirst = takeoffDifference < 0;
  const lateTouchdown = times.touchdown + Math.abs(touchdownDifference);
  const rightLandsLast = touchdownDifference > 0;
  const joinSeconds = 3 * Math.abs(touchdownDifference);
  if (lateTouchdown + joinSeconds > times.touchdown + body.landing.firstPeakTime) {
    throw new RangeError(`Limbs landing ${touchdownDifference} s apart would not both carry the first landing peak.`);
  }

  const rightWith = (time: number, propulsion: number): number => {
    const total = body.force(time);
    if (total === 0) return 0;
    const right = shareAt(time, propulsion) * total;
    if (takeoffDifference !== 0 && time > lineStart && time < times.takeoff) {
      const shareThere = shareAt(lineStart, propulsion);
      const early = (rightLeavesFirst ? shareThere : 1 - shareThere) * body.force(lineStart);
      const remaining = Math.max(0, (early * (earlyTakeoff - time)) / (earlyTakeoff - lineStart));
      return rightLeavesFirst ? remaining : total - remaining;
    }
    if (touchdownDifference !== 0 && time > times.touchdown && time < lateTouchdown + joinSeconds) {
      const u = Math.max(0, (time - lateTouchdown) / joinSeconds);
      const late = (rightLandsLast ? right : total - right) * u * (2 - u);
      return rightLandsLast ? late : total - late;
    }
    return right;
  };

  const breaks = [
    ...body.breaks,
    brakingStart,
    times.endOfUnweighting,
    times.lowestPosition,
    times.lowestPosition + propulsionEase,
    lineStart,
    earlyTakeoff,
    lateTouchdown,
    lateTouchdown + joinSeconds,
    times.landingEnd,
    ...(shift === undefined ? [] : [shiftStart, shiftStart + shift.seconds]),
  ];
  const propulsionImpulse = (propulsion: number): number =>
    integrate((time) => rightWith(time, propulsion), times.lowestPosition, times.takeoff, breaks);
  const wanted = shares.propulsion * integrate(body.force, times.lowestPosition, times.takeoff, breaks);
  const atZero = propulsionImpulse(0);
  const propulsionLevel = (wanted - atZero) / (propulsionImpulse(1) - atZero);

  const right = (time: number): number => rightWith(time, propulsionLevel);
  return {
    right,
    left: (time) => body.force(time) - right(time),
    limbTimes: {
      left: {
        takeoff: rightLeavesFirst ? times.takeoff : earlyTakeoff,
        touchdown: rightLandsLast ? times.touchdown : lateTouchdown,
      },
      right: {
        takeoff: rightLeavesFirst ? earlyTakeoff : times.takeoff,
        touchdown: rightLandsLast ? lateTouchdown : times.touchdown,
      },
    },
    breaks,
  };
}

/** One leg: it carries everything, less what the other foot is asked to press during the push or after the landing. */
function singleLegForces(body: Body, options: JumpOptions, limb: "left" | "right"): LimbForces {
  const { times } = body;
  const pressing = options.otherFootNewtons ?? 0;
  const pressStart = times.firstMovement;
  const pressSeconds = 0.9 * (times.takeoff - times.firstMovement);
  const settleSeconds = times.standingAgain - times.landingEnd;
  const afterShare = options.standsOnBothAfterLanding === true ? 0.5 : 0;
  const other = (time: number): number => {
    if (time < times.takeoff) return pressing * smoothBump(time, pressStart, pressSeconds)[0];
    return afterShare * quinticStep(time, times.landingEnd, settleSeconds)[0] * body.force(time);
  };
  const working = (time: number): number => body.force(time) - other(time);
  const breaks = [...body.breaks, pressStart + pressSeconds, times.landingEnd];
  const limbTimes = { takeoff: times.takeoff, touchdown: times.touchdown };
  return limb === "left"
    ? { left: working, right: other, limbTimes: { left: limbTimes }, breaks }
    : { left: other, right: working, limbTimes: { right: limbTimes }, breaks };
}
