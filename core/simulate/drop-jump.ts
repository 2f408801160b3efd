import type { Limb, Side } from "../limb.ts";
import type { ContactLaw } from "./contact-law.ts";
import { solveContact } from "./contact-law.ts";
import type { SimulatedRecording } from "./countermovement-jump.ts";
import type { Course } from "./course.ts";
import { buildCourse, joinLaws } from "./course.ts";
import { sumDisplacements } from "./displacement.ts";
import type { DropJumpOptions } from "./drop-options.ts";
import type { DropJumpTruth } from "./drop-truth.ts";
import { describeDropJump } from "./drop-truth.ts";
import { solveLanding } from "./landing-law.ts";
import { fallLaw, flightLaw, lawOfPieces, restLaw } from "./law.ts";
import type { LimbTakeoff, LimbTouchdown, SharedForces } from "./limb-sharing.ts";
import { limbInstant, loadOneLimb, shareBetweenLimbs } from "./limb-sharing.ts";
import { createRandom } from "./random.ts";
import type { Stroke } from "./record-course.ts";
import { recordCourse, stepSeconds } from "./record-course.ts";
import { contactShapes, landingShapes } from "./shapes.ts";
import { drawSway, swayDisplacement } from "./sway.ts";

const standardGravity = 9.80665;
/** A bounce leaves the plate again with bent knees. */
const bounceContactSeconds = 0.32;
const bounceLowerMetres = 0.12;

/** A simulated drop jump and what really happened in it. */
export interface SimulatedDropJump extends SimulatedRecording {
  readonly truth: DropJumpTruth;
  /** The physical force of both feet together in continuous time (newtons), free of everything a plate adds. */
  readonly forceAt: (time: number) => number;
  /** Velocity (m/s) and position (m, zero in sway-free standing) of the centre of mass in continuous time, upward. */
  readonly velocityAt: (time: number) => number;
  readonly positionAt: (time: number) => number;
}

/**
 * Simulates a drop jump: the body falls onto an empty plate, turns, flies, lands and stands. Closed forms throughout,
 * so every true value is exact; samples fall at random phase to all events. The same options give the same bytes.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateDropJump(options: DropJumpOptions): SimulatedDropJump {
  const random = createRandom(options.seed);
  const { rateHz, limb } = options;
  const movement = solveDropJump(options);
  const { landings } = movement;
  const clock = joinLaws(movement.laws, random.uniform() / rateHz);
  const begin = (index: number): number => clock[index]?.start ?? Number.NaN;
  const touchdown = begin(1);
  const takeoff = begin(2);
  const landing = begin(3);
  const lastIndex = clock.length - 2;
  const lastTouchdown = begin(lastIndex);
  const standingAgain = begin(lastIndex + 1);
  const landingEnd = landing + landings.restAfter;
  const settled = lastTouchdown + landings.lastRestAfter;

  const swayParts =
    options.swayMetres === undefined
      ? []
      : [
          swayDisplacement(drawSway(random, options.swayMetres), {
            fadeStart: Number.MIN_SAFE_INTEGER,
            fadeSeconds: 1,
            returnStart: settled,
            returnSeconds: standingAgain - settled,
          }),
        ];
  const course = buildCourse(options.massKg, movement.gravity, clock, sumDisplacements(swayParts));
  const times = {
    touchdown,
    lowestPosition: touchdown + movement.contact.lowestPosition,
    takeoff,
    landing,
    landingEnd,
    standingAgain,
  };
  const contacts = limbContacts(options, times, movement);
  const limbs =
    limb === "both"
      ? shareOfTwoLegs(options, course, contacts, times, settled)
      : shareOfOneLeg(options, course, limb, times, settled);

  const quietAfter = options.quietSecondsAfter ?? 2.7;
  const stepsOffAt = options.emptySecondsAfter === undefined ? undefined : standingAgain + quietAfter;
  const end =
    options.endsAfterTouchdownSeconds !== undefined
      ? lastTouchdown + options.endsAfterTouchdownSeconds
      : stepsOffAt === undefined
        ? standingAgain + quietAfter
        : stepsOffAt + stepSeconds + (options.emptySecondsAfter ?? 0);
  const beside = options.landsBesidePlates === true;
  const instants = (foot: Limb, event: LimbTouchdown | LimbTakeoff, kind: "touchdown" | "takeoff"): number =>
    foot === "both" ? event.time : limbInstant(event, foot, kind);
  const strokes = (foot: Limb): readonly Stroke[] => {
    if (limb !== "both" && foot !== limb) return [];
    const part = limb === "both" && foot !== "both" ? 0.5 : 1;
    // A plate that is left rings less than one that is struck.
    return [
      { time: instants(foot, contacts.touchdown, "touchdown"), part },
      { time: instants(foot, contacts.takeoff, "takeoff"), part: part / 2 },
      ...(beside ? [] : [{ time: instants(foot, contacts.landing, "touchdown"), part }]),
    ];
  };
  const recording = recordCourse(course, limbs, options, random, {
    sampleCount: Math.floor(end * rateHz) + 1,
    presence: {
      ...(stepsOffAt === undefined ? {} : { stepsOffAt }),
      ...(beside ? { besideFrom: landing } : {}),
    },
    strokes,
  });
  const limbEvents = (side: Side) => ({
    touchdown: limbInstant(contacts.touchdown, side, "touchdown"),
    takeoff: limbInstant(contacts.takeoff, side, "takeoff"),
    landing: limbInstant(contacts.landing, side, "touchdown"),
  });
  return {
    ...recording,
    truth: describeDropJump(course, limbs, options, times, {
      contact: movement.contact,
      limbEvents: {
        ...(limb === "right" ? {} : { left: limbEvents("left") }),
        ...(limb === "left" ? {} : { right: limbEvents("right") }),
      },
    }),
    forceAt: course.force,
    velocityAt: course.velocity,
    positionAt: course.position,
  };
}

interface DropMovement {
  readonly gravity: number;
  readonly laws: Parameters<typeof joinLaws>[0];
  readonly contact: ContactLaw;
  readonly landings: { readonly restAfter: number; readonly lastRestAfter: number; readonly firstPeak: number };
}

/** The laws in order: fall, contact, flight, landing (with a bounce: landing contact, flight, landing), standing. */
function solveDropJump(options: DropJumpOptions): DropMovement {
  const gravity = options.gravity ?? standardGravity;
  const weight = options.massKg * gravity;
  const single = options.limb !== "both";
  const straightTo = options.straightTo ?? 0.4;
  const effective = options.dropHeightEffectiveMetres ?? 0.9 * options.boxHeightMetres;
  const positionAtTakeoff = options.positionAtTakeoffMetres ?? (single ? 0.085 : 0.105);
  const takeoffVelocity = Math.sqrt(2 * gravity * options.jumpHeightMetres);
  const landingShape = landingShapes[options.landingShape ?? "ordinary"];
  const touchdownRate = options.touchdownRateNewtonsPerSecond ?? clamp(55 * weight, 11000, 60000);
  const contact = solveContact({
    shape: contactShapes[options.contactShape ?? "hump"],
    gravity,
    seconds: options.contactSeconds,
    touchdownVelocity: -Math.sqrt(2 * gravity * effective),
    takeoffVelocity,
    positionAtTakeoff,
    touchdownLowerMetres: options.contactLowerMetres ?? 0.01,
    risePerSecond: touchdownRate / weight,
    fallPerSecond: (options.takeoffRateNewtonsPerSecond ?? clamp(34 * weight, 12000, 29000)) / weight,
    straightTo,
  });
  const landAfter = (up: number, from: number, lower: number) => {
    const down = -Math.sqrt(up * up + 2 * gravity * lower);
    return { down, flight: flightLaw((up - down) / gravity, up, from, gravity), position: from - lower };
  };
  const ratePerSecond =
    (options.landingRateNewtonsPerSecond ?? clamp(landingShape.ratePerSecond * weight, 11000, 98000)) / weight;
  const land = (down: number, positionAtTouchdown: number) =>
    solveLanding({
      shape: landingShape,
      gravity,
      touchdownVelocity: down,
      positionAtTouchdown,
      ratePerSecond,
      straightTo,
    });
  const jump = landAfter(takeoffVelocity, positionAtTakeoff, options.touchdownLowerMetres ?? 0.01);
  const fall = fallLaw(
    options.emptySecondsBefore ?? 1.2,
    -Math.sqrt(2 * gravity * effective),
    contact.positionAtTouchdown,
    gravity,
  );
  const standing = restLaw(options.quietSecondsAfter ?? 2.7, 0);
  if (options.bounceFlightSeconds === undefined) {
    const landing = land(jump.down, jump.position);
    const rest = { restAfter: landing.landingEnd, lastRestAfter: landing.landingEnd, firstPeak: landing.firstPeakTime };
    return {
      gravity,
      contact,
      laws: [fall, contact, jump.flight, lawOfPieces(landing.force, landing.motion), standing],
      landings: rest,
    };
  }
  const up = (gravity * options.bounceFlightSeconds) / 2;
  const bouncing = solveContact({
    shape: contactShapes["impact-peak"],
    gravity,
    seconds: bounceContactSeconds,
    touchdownVelocity: jump.down,
    takeoffVelocity: up,
    positionAtTakeoff: jump.position - bounceLowerMetres,
    touchdownLowerMetres: -bounceLowerMetres,
    risePerSecond: ratePerSecond,
    fallPerSecond: clamp(20 * weight, 8000, 25000) / weight,
    straightTo,
  });
  const bounce = landAfter(up, jump.position - bounceLowerMetres, 0);
  const landing = land(bounce.down, bounce.position);
  return {
    gravity,
    contact,
    laws: [fall, contact, jump.flight, bouncing, bounce.flight, lawOfPieces(landing.force, landing.motion), standing],
    landings: {
      restAfter: bouncing.lowestPosition,
      lastRestAfter: landing.landingEnd,
      firstPeak: bouncing.firstPeakTime,
    },
  };
}

interface DropTimes {
  readonly touchdown: number;
  readonly lowestPosition: number;
  readonly takeoff: number;
  readonly landing: number;
  readonly landingEnd: number;
  readonly standingAgain: number;
}

function limbContacts(options: DropJumpOptions, times: DropTimes, { contact, landings }: DropMovement) {
  const { leadingLeg, limb } = options;
  const two = limb === "both";
  const lead = leadingLeg === undefined ? 0 : (leadingLeg === "left" ? 1 : -1) * (options.leadingFirstSeconds ?? 0.004);
  const touchdown: LimbTouchdown = {
    time: times.touchdown,
    rightMinusLeftSeconds: two ? lead : 0,
    firstPeak: times.touchdown + contact.firstPeakTime,
  };
  const takeoff: LimbTakeoff = {
    time: times.takeoff,
    rightMinusLeftSeconds: two ? (options.limbTakeoffDifferenceSeconds ?? 0) : 0,
    fallStart: times.touchdown + contact.fallStart,
  };
  const landing: LimbTouchdown = {
    time: times.landing,
    rightMinusLeftSeconds: two ? (options.limbLandingDifferenceSeconds ?? 0) : 0,
    firstPeak: times.landing + landings.firstPeak,
  };
  return { touchdown, takeoff, landing };
}

function shareOfTwoLegs(
  options: DropJumpOptions,
  course: Course,
  contacts: ReturnType<typeof limbContacts>,
  times: DropTimes,
  settled: number,
): SharedForces {
  const shares = options.rightShares ?? { standing: 0.5, braking: 0.5, propulsion: 0.5, landing: 0.5 };
  const gain = options.leadingBrakingGain ?? 0.03;
  const lead = options.leadingLeg === undefined ? 0 : options.leadingLeg === "right" ? gain : -gain;
  const { touchdown, lowestPosition, takeoff, standingAgain } = times;
  return shareBetweenLimbs(course, {
    startShare: shares.braking,
    stages: [
      { from: touchdown, easeSeconds: 0, share: shares.braking + lead, impulseTo: lowestPosition },
      {
        from: lowestPosition,
        easeSeconds: (takeoff - lowestPosition) / 3,
        share: shares.propulsion,
        impulseTo: takeoff,
      },
      { from: takeoff, easeSeconds: 0, share: shares.landing },
      { from: settled, easeSeconds: standingAgain - settled, share: shares.standing },
    ],
    touchdowns: [contacts.touchdown, contacts.landing],
    takeoffs: [contacts.takeoff],
  });
}

function shareOfOneLeg(
  options: DropJumpOptions,
  course: Course,
  limb: Side,
  times: DropTimes,
  settled: number,
): SharedForces {
  const press = options.otherFootNewtons;
  return loadOneLimb(course, limb, {
    ...(press === undefined
      ? {}
      : {
          press: {
            newtons: press,
            from: times.touchdown + 0.1 * (times.takeoff - times.touchdown),
            seconds: 0.8 * (times.takeoff - times.touchdown),
          },
        }),
    ...(options.standsOnBothAfterLanding === true
      ? { carriesHalf: { from: settled, seconds: times.standingAgain - settled } }
      : {}),
  });
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
