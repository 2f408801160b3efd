import type { Act, ActPlan, RecordedActs } from "./act.ts";
import { recordActs, standardGravity } from "./act.ts";
import { solveContact } from "./contact-law.ts";
import type { DropJumpOptions } from "./drop-options.ts";
import type { DropJumpTruth } from "./drop-truth.ts";
import { describeDropJump } from "./drop-truth.ts";
import type { LandingSequence } from "./landing-sequence.ts";
import { solveLandingSequence } from "./landing-sequence.ts";
import { fallLaw, flightLaw } from "./law.ts";
import type { LimbTakeoff, LimbTouchdown } from "./limb-sharing.ts";
import { contactShapes, landingShapes } from "./shapes.ts";
import { standAct, stepOffAct } from "./standing-acts.ts";

/** A simulated drop jump and what really happened in it. */
export interface SimulatedDropJump extends Omit<RecordedActs<unknown>, "truths"> {
  readonly truth: DropJumpTruth;
}

/**
 * Simulates a drop jump: the body falls onto an empty plate, turns, flies, lands and stands. Closed forms throughout,
 * so every true value is exact; samples fall at random phase to all events. The same options give the same bytes.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateDropJump(options: DropJumpOptions): SimulatedDropJump {
  const act = dropJumpAct(options);
  const cut = options.endsAfterTouchdownSeconds;
  const { truths, ...recording } = recordActs(
    options,
    options.rightShares?.standing ?? 0.5,
    [act, ...afterLandingActs(options)],
    cut === undefined ? undefined : (plans) => (plans[0]?.touchdowns?.at(-1)?.time ?? Number.NaN) + cut,
  );
  const truth = truths[0];
  if (truth === undefined) throw new Error("The first act is the drop jump.");
  return { ...recording, truth };
}

/** Quiet standing, and stepping off where asked for. */
export function afterLandingActs(
  options: Pick<DropJumpOptions, "quietSecondsAfter" | "emptySecondsAfter">,
): readonly Act<undefined>[] {
  const standing = standAct(options.quietSecondsAfter ?? 2.7);
  return options.emptySecondsAfter === undefined ? [standing] : [standing, stepOffAct(options.emptySecondsAfter)];
}

/** A drop jump as a part of a recording: from the empty plate to standing. */
export function dropJumpAct(options: DropJumpOptions): Act<DropJumpTruth> {
  const gravity = options.gravity ?? standardGravity;
  const weightNewtons = options.massKg * gravity;
  const single = options.limb !== "both";
  const straightTo = options.straightTo ?? 0.4;
  const effective = options.dropHeightEffectiveMetres ?? 0.9 * options.boxHeightMetres;
  const positionAtTakeoff = options.positionAtTakeoffMetres ?? (single ? 0.085 : 0.105);
  const takeoffVelocity = Math.sqrt(2 * gravity * options.jumpHeightMetres);
  const shape = landingShapes[options.landingShape ?? "ordinary"];
  const rate = options.touchdownRateNewtonsPerSecond ?? clamp(55 * weightNewtons, 11000, 60000);
  const contact = solveContact({
    shape: contactShapes[options.contactShape ?? "hump"],
    gravity,
    seconds: options.contactSeconds,
    touchdownVelocity: -Math.sqrt(2 * gravity * effective),
    takeoffVelocity,
    positionAtTakeoff,
    touchdownLowerMetres: options.contactLowerMetres ?? 0.01,
    risePerSecond: rate / weightNewtons,
    fallPerSecond: (options.takeoffRateNewtonsPerSecond ?? clamp(34 * weightNewtons, 12000, 29000)) / weightNewtons,
    straightTo,
  });
  const lower = options.touchdownLowerMetres ?? 0.01;
  const landingVelocity = -Math.sqrt(takeoffVelocity * takeoffVelocity + 2 * gravity * lower);
  const landing = solveLandingSequence({
    shape,
    gravity,
    weightNewtons,
    touchdownVelocity: landingVelocity,
    positionAtTouchdown: positionAtTakeoff - lower,
    touchdownRateNewtonsPerSecond:
      options.landingRateNewtonsPerSecond ?? clamp(shape.ratePerSecond * weightNewtons, 11000, 98000),
    straightTo,
    ...(options.bounceFlightSeconds === undefined ? {} : { bounceFlightSeconds: options.bounceFlightSeconds }),
  });
  const timesOf = (starts: readonly number[]): DropJumpTruth["events"] => {
    const [, touchdown = Number.NaN, takeoff = Number.NaN, down = Number.NaN] = starts;
    return {
      touchdown,
      lowestPosition: touchdown + contact.lowestPosition,
      takeoff,
      landing: down,
      landingEnd: down + landing.restAfter,
      standingAgain: starts.at(-1) ?? Number.NaN,
    };
  };
  return {
    laws: [
      fallLaw(
        options.emptySecondsBefore ?? 1.2,
        -Math.sqrt(2 * gravity * effective),
        contact.positionAtTouchdown,
        gravity,
      ),
      contact,
      flightLaw((takeoffVelocity - landingVelocity) / gravity, takeoffVelocity, positionAtTakeoff, gravity),
      ...landing.laws,
    ],
    plan: (starts) => planOf(options, starts, timesOf(starts), contact, landing),
    describe: (scene, starts, plan) => describeDropJump(scene, options, timesOf(starts), contact, plan),
  };
}

function planOf(
  options: DropJumpOptions,
  starts: readonly number[],
  times: DropJumpTruth["events"],
  contact: { readonly firstPeakTime: number; readonly fallStart: number },
  landing: LandingSequence,
): ActPlan {
  const two = options.limb === "both";
  const { touchdown, lowestPosition, takeoff, standingAgain } = times;
  const lead = options.leadingLeg === undefined || !two ? 0 : options.leadingLeg === "left" ? 1 : -1;
  const making = (time: number, rightMinusLeftSeconds: number, firstPeakAfter: number): LimbTouchdown => ({
    time,
    rightMinusLeftSeconds: two ? rightMinusLeftSeconds : 0,
    firstPeak: time + firstPeakAfter,
  });
  const lastTouchdown = starts.at(-2) ?? Number.NaN;
  const bounces = landing.laws.length > 1;
  const touchdowns = [
    making(touchdown, lead * (options.leadingFirstSeconds ?? 0.004), contact.firstPeakTime),
    making(times.landing, options.limbLandingDifferenceSeconds ?? 0, landing.firstPeakAfter),
    ...(bounces ? [making(lastTouchdown, 0, landing.lastFirstPeakAfter)] : []),
  ];
  const leaving: LimbTakeoff = {
    time: takeoff,
    rightMinusLeftSeconds: two ? (options.limbTakeoffDifferenceSeconds ?? 0) : 0,
    fallStart: touchdown + contact.fallStart,
  };
  const shares = options.rightShares ?? { standing: 0.5, braking: 0.5, propulsion: 0.5, landing: 0.5 };
  const braking = shares.braking - lead * (options.leadingBrakingGain ?? 0.03);
  const settled = lastTouchdown + landing.lastRestAfter;
  const settleSeconds = standingAgain - settled;
  const pushSeconds = takeoff - lowestPosition;
  const press = options.otherFootNewtons;
  const contactSeconds = takeoff - touchdown;
  return {
    stages: [
      { from: touchdown, easeSeconds: 0, share: braking, impulseTo: lowestPosition },
      { from: lowestPosition, easeSeconds: pushSeconds / 3, share: shares.propulsion, impulseTo: takeoff },
      { from: takeoff, easeSeconds: 0, share: shares.landing },
      { from: settled, easeSeconds: settleSeconds, share: shares.standing },
    ],
    touchdowns,
    takeoffs: [leaving],
    gate: { fadeStart: (starts[0] ?? 0) - 0.5, fadeSeconds: 0.5, returnStart: settled, returnSeconds: settleSeconds },
    presence: [
      { at: starts[0] ?? 0, seconds: 0, on: true },
      ...(options.landsBesidePlates === true ? [{ at: times.landing, seconds: 0, on: false }] : []),
    ],
    ...(press === undefined
      ? {}
      : {
          presses: [{ newtons: press, from: touchdown + 0.1 * contactSeconds, seconds: 0.8 * contactSeconds }],
        }),
    ...(options.standsOnBothAfterLanding === true ? { carriesHalf: { from: settled, seconds: settleSeconds } } : {}),
  };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
