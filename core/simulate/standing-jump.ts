import type { Limb, Side } from "../ground/limb.ts";
import type { ActPlan } from "./act.ts";
import type { LandingSequence } from "./landing-sequence.ts";
import { solveLandingSequence } from "./landing-sequence.ts";
import type { Law } from "./law.ts";
import { flightLaw } from "./law.ts";
import { limbInstant } from "./limb-sharing.ts";
import type { JumpOptions, RightShares } from "./options.ts";
import { landingShapes } from "./shapes.ts";

/** What jumps from standing have in common besides their push. */
export type StandingJumpOptions = Pick<
  JumpOptions,
  | "massKg"
  | "limb"
  | "landingShape"
  | "touchdownLowerMetres"
  | "touchdownRateNewtonsPerSecond"
  | "straightTo"
  | "rightShares"
  | "limbTakeoffDifferenceSeconds"
  | "limbTouchdownDifferenceSeconds"
  | "otherFootNewtons"
  | "standsOnBothAfterLanding"
  | "landsBesidePlates"
> & {
  /** After the landing the body leaves the plate once more, for this long, before it stands. */
  readonly bounceFlightSeconds?: number;
};

/** Flight and landing after a push. */
export interface FlightAndLanding {
  readonly laws: readonly Law[];
  readonly landing: LandingSequence;
  /** Negative. */
  readonly touchdownVelocity: number;
  readonly positionAtTouchdown: number;
}

/** Instants of a push on the recording's clock. */
export interface PushInstants {
  readonly firstMovement: number;
  /** Braking begins here; the same as the lowest position where there is no dip. */
  readonly brakingStart: number;
  readonly lowestPosition: number;
  readonly takeoff: number;
  readonly fallStart: number;
}

const shareEaseSeconds = 0.12;

/** Solves what follows a push: flight, landing, standing. */
export function solveFlightAndLanding(
  options: StandingJumpOptions,
  gravity: number,
  takeoffVelocity: number,
  positionAtTakeoff: number,
): FlightAndLanding {
  const weightNewtons = options.massKg * gravity;
  const lower = options.touchdownLowerMetres ?? 0.01;
  const shape = landingShapes[options.landingShape ?? "ordinary"];
  const touchdownVelocity = -Math.sqrt(takeoffVelocity * takeoffVelocity + 2 * gravity * lower);
  const positionAtTouchdown = positionAtTakeoff - lower;
  const landing = solveLandingSequence({
    shape,
    gravity,
    weightNewtons,
    touchdownVelocity,
    positionAtTouchdown,
    touchdownRateNewtonsPerSecond:
      options.touchdownRateNewtonsPerSecond ?? Math.min(Math.max(shape.ratePerSecond * weightNewtons, 11000), 98000),
    straightTo: options.straightTo ?? 0,
    ...(options.bounceFlightSeconds === undefined ? {} : { bounceFlightSeconds: options.bounceFlightSeconds }),
  });
  const flight = flightLaw(
    (takeoffVelocity - touchdownVelocity) / gravity,
    takeoffVelocity,
    positionAtTakeoff,
    gravity,
  );
  return { laws: [flight, ...landing.laws], landing, touchdownVelocity, positionAtTouchdown };
}

/** The plan of a push from standing with its flight and landing; `starts` ends with flight, landing laws and their end. */
export function planStandingJump(
  options: StandingJumpOptions,
  push: PushInstants,
  { landing }: FlightAndLanding,
  starts: readonly number[],
): ActPlan {
  const two = options.limb === "both";
  const shares: RightShares = options.rightShares ?? { standing: 0.5, braking: 0.5, propulsion: 0.5, landing: 0.5 };
  const { firstMovement, brakingStart, lowestPosition, takeoff } = push;
  const touchdown = starts[starts.length - 1 - landing.laws.length] ?? Number.NaN;
  const lastTouchdown = starts.at(-2) ?? Number.NaN;
  const settled = lastTouchdown + landing.lastRestAfter;
  const settleSeconds = (starts.at(-1) ?? Number.NaN) - settled;
  const brakingEase = Math.min(shareEaseSeconds, brakingStart - firstMovement);
  const pushSeconds = takeoff - firstMovement;
  const press = options.otherFootNewtons;
  return {
    stages: [
      { from: brakingStart - brakingEase, easeSeconds: brakingEase, share: shares.braking },
      {
        from: lowestPosition,
        easeSeconds: (takeoff - lowestPosition) / 3,
        share: shares.propulsion,
        impulseTo: takeoff,
      },
      { from: takeoff, easeSeconds: 0, share: shares.landing },
      { from: settled, easeSeconds: settleSeconds, share: shares.standing },
    ],
    touchdowns: [
      {
        time: touchdown,
        rightMinusLeftSeconds: two ? (options.limbTouchdownDifferenceSeconds ?? 0) : 0,
        firstPeak: touchdown + landing.firstPeakAfter,
      },
      ...(landing.laws.length > 1
        ? [{ time: lastTouchdown, rightMinusLeftSeconds: 0, firstPeak: lastTouchdown + landing.lastFirstPeakAfter }]
        : []),
    ],
    takeoffs: [
      {
        time: takeoff,
        rightMinusLeftSeconds: two ? (options.limbTakeoffDifferenceSeconds ?? 0) : 0,
        fallStart: push.fallStart,
      },
    ],
    gate: {
      fadeStart: firstMovement,
      fadeSeconds: 0.8 * pushSeconds,
      returnStart: settled,
      returnSeconds: settleSeconds,
    },
    ...(options.landsBesidePlates === true ? { presence: [{ at: touchdown, seconds: 0, on: false }] } : {}),
    ...(press === undefined ? {} : { presses: [{ newtons: press, from: firstMovement, seconds: 0.9 * pushSeconds }] }),
    ...(options.standsOnBothAfterLanding === true ? { carriesHalf: { from: settled, seconds: settleSeconds } } : {}),
  };
}

/** Each working limb's own loss and making of contact of the first flight. */
export function limbEventsOfJump(
  limb: Limb,
  plan: ActPlan,
): Readonly<Partial<Record<Side, { readonly takeoff: number; readonly touchdown: number }>>> {
  const [takeoff] = plan.takeoffs ?? [];
  const [touchdown] = plan.touchdowns ?? [];
  if (takeoff === undefined || touchdown === undefined) return {};
  const of = (side: Side) => ({
    takeoff: limbInstant(takeoff, side, "takeoff"),
    touchdown: limbInstant(touchdown, side, "touchdown"),
  });
  return { ...(limb === "right" ? {} : { left: of("left") }), ...(limb === "left" ? {} : { right: of("right") }) };
}
