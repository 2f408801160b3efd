import type { Displacement } from "./displacement.ts";
import { bumpDisplacement, sumDisplacements } from "./displacement.ts";
import type { LandingLaw } from "./landing-law.ts";
import { solveLanding } from "./landing-law.ts";
import type { JumpOptions } from "./options.ts";
import { evaluatePiecewise } from "./piecewise.ts";
import type { PushLaw } from "./push-law.ts";
import { solvePush } from "./push-law.ts";
import type { Random } from "./random.ts";
import { rememberLast } from "./remember-last.ts";
import { landingShapes, pushShapes } from "./shapes.ts";
import { findRoot } from "./solve.ts";
import type { Sway } from "./sway.ts";
import { drawSway, swayDisplacement } from "./sway.ts";

const standardGravity = 9.80665;

/** Instants of the physical jump in seconds on the recording's clock. */
export interface JumpTimes {
  /** First movement of the intended, sway-free motion. */
  readonly firstMovement: number;
  readonly endOfUnweighting: number;
  readonly lowestPosition: number;
  readonly takeoff: number;
  readonly touchdown: number;
  readonly landingEnd: number;
  /** The intended motion has come to rest in the standing position. */
  readonly standingAgain: number;
}

/** The jumping body in continuous time; every function is a closed form of time. */
export interface Body {
  readonly massKg: number;
  readonly gravity: number;
  readonly weightNewtons: number;
  readonly times: JumpTimes;
  readonly push: PushLaw;
  readonly landing: LandingLaw;
  readonly sway: Sway | undefined;
  readonly takeoffVelocity: number;
  readonly touchdownVelocity: number;
  readonly positionAtTakeoff: number;
  readonly positionAtTouchdown: number;
  readonly takeoffRateNewtonsPerSecond: number;
  readonly touchdownRateNewtonsPerSecond: number;
  /** Force that moves the body: mass times (gravity + acceleration); zero in flight. */
  force(time: number): number;
  velocity(time: number): number;
  position(time: number): number;
  /** Where a derivative of the force jumps. */
  readonly breaks: readonly number[];
}

/** Builds the motion of a jump whose first movement is at the given time. */
export function buildBody(options: JumpOptions, firstMovement: number, random: Random): Body {
  const gravity = options.gravity ?? standardGravity;
  const { massKg } = options;
  const weightNewtons = massKg * gravity;
  const single = options.limb !== "both";
  const height = options.jumpHeightMetres;
  const takeoffVelocity = Math.sqrt(2 * gravity * height);
  const pushShape = pushShapes[options.pushShape ?? "even"];
  const landingShape = landingShapes[options.landingShape ?? "ordinary"];
  const takeoffRateNewtonsPerSecond = options.takeoffRateNewtonsPerSecond ?? clamp(20 * weightNewtons, 5500, 29000);
  const touchdownRateNewtonsPerSecond =
    options.touchdownRateNewtonsPerSecond ?? clamp(landingShape.ratePerSecond * weightNewtons, 11000, 98000);
  // One leg unweights less; a high jump is prepared by a deeper unweighting.
  const minimum =
    options.unweightingMinimum ??
    (single ? Math.max(0.68, pushShape.minimum) : pushShape.minimum - 0.5 * Math.max(0, height - 0.3));
  const push = solvePush({
    shape: pushShape,
    gravity,
    seconds: options.timeToTakeoffSeconds ?? naturalSeconds(options),
    takeoffVelocity,
    positionAtTakeoff: options.positionAtTakeoffMetres ?? (single ? 0.085 : 0.105),
    fallPerSecond: takeoffRateNewtonsPerSecond / weightNewtons,
    kneeForce: single ? 0.95 : 1,
    ...(options.depthMetres === undefined ? {} : { depthMetres: options.depthMetres }),
    minimum,
    ...(options.riseBeforeDip === undefined ? {} : { riseBeforeDip: options.riseBeforeDip }),
  });
  const positionAtTakeoff = push.motion.finalPosition;
  const positionAtTouchdown = positionAtTakeoff - (options.touchdownLowerMetres ?? 0.01);
  const touchdownVelocity = -Math.sqrt(
    takeoffVelocity * takeoffVelocity + 2 * gravity * (positionAtTakeoff - positionAtTouchdown),
  );
  const takeoff = firstMovement + push.force.seconds;
  const touchdown = takeoff + (takeoffVelocity - touchdownVelocity) / gravity;
  const landing = solveLanding({
    shape: landingShape,
    gravity,
    touchdownVelocity,
    positionAtTouchdown,
    ratePerSecond: touchdownRateNewtonsPerSecond / weightNewtons,
    ...(options.straightTo === undefined ? {} : { straightTo: options.straightTo }),
  });
  const standingAgain = touchdown + landing.force.seconds;
  const landingEnd = touchdown + landing.landingEnd;

  const sway = options.swayMetres === undefined ? undefined : drawSway(random, options.swayMetres, options.swayBandHz);
  const parts: Displacement[] = [];
  if (sway !== undefined) {
    parts.push(
      swayDisplacement(sway, {
        fadeStart: firstMovement,
        fadeSeconds: 0.8 * push.force.seconds,
        returnStart: landingEnd,
        returnSeconds: standingAgain - landingEnd,
      }),
    );
  }
  const shift = options.weightShift;
  if (shift !== undefined) {
    parts.push(bumpDisplacement(shift.metres, firstMovement - shift.endsBeforeSeconds - shift.seconds, shift.seconds));
  }
  const swing = options.legSwing;
  if (swing !== undefined) {
    const middle = firstMovement + swing.middleSeconds;
    parts.push(bumpDisplacement(swing.metres, middle - swing.seconds / 2, swing.seconds));
    if (middle + swing.seconds / 2 > takeoff) throw new RangeError("The leg swings on after take-off.");
  }
  const extra = sumDisplacements(parts);

  const intended = (time: number, read: (law: PushLaw | LandingLaw, local: number) => number, rest: number): number => {
    if (time <= firstMovement || time >= standingAgain) return rest;
    if (time < takeoff) return read(push, time - firstMovement);
    return read(landing, time - touchdown);
  };
  const isFlight = (time: number): boolean => time >= takeoff && time <= touchdown;
  const force = rememberLast((time) =>
    isFlight(time)
      ? 0
      : weightNewtons * intended(time, (law, local) => evaluatePiecewise(law.force, local), 1) +
        massKg * extra.acceleration(time),
  );
  const velocity = (time: number): number =>
    isFlight(time)
      ? takeoffVelocity - gravity * (time - takeoff)
      : intended(time, (law, local) => evaluatePiecewise(law.motion.velocity, local), 0) + extra.velocity(time);
  const position = (time: number): number =>
    isFlight(time)
      ? positionAtTakeoff + takeoffVelocity * (time - takeoff) - (gravity * (time - takeoff) ** 2) / 2
      : intended(time, (law, local) => evaluatePiecewise(law.motion.position, local), 0) + extra.position(time);

  const endOfUnweighting = findRoot(
    (time) => force(time) - weightNewtons,
    firstMovement + push.riseStart,
    firstMovement + push.riseEnd,
  );
  const lowestPosition =
    endOfUnweighting === undefined ? undefined : findRoot(velocity, endOfUnweighting, takeoff - 1e-6);
  if (endOfUnweighting === undefined || lowestPosition === undefined) {
    throw new RangeError("The dip of this jump is too small to have a lowest position.");
  }
  const breaks = [
    firstMovement,
    ...push.force.starts.map((start) => firstMovement + start),
    takeoff,
    touchdown,
    ...landing.force.starts.map((start) => touchdown + start),
    standingAgain,
    ...extra.breaks,
  ];
  return {
    massKg,
    gravity,
    weightNewtons,
    times: { firstMovement, endOfUnweighting, lowestPosition, takeoff, touchdown, landingEnd, standingAgain },
    push,
    landing,
    sway,
    takeoffVelocity,
    touchdownVelocity,
    positionAtTakeoff,
    positionAtTouchdown,
    takeoffRateNewtonsPerSecond,
    touchdownRateNewtonsPerSecond,
    force,
    velocity,
    position,
    breaks,
  };
}

/** A plausible time to take-off where none is asked for: higher jumps and slower shapes take longer. */
function naturalSeconds(options: JumpOptions): number {
  const slower = options.pushShape === "slow-dip" ? 0.16 : options.pushShape === "bottom-pause" ? 0.2 : 0;
  const single = options.limb === "both" ? 0 : 0.12;
  return 0.62 + 0.6 * options.jumpHeightMetres + slower + single + (options.riseBeforeDip?.seconds ?? 0);
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
