import type { Side } from "../ground/limb.ts";
import type { Course } from "./course.ts";
import { quinticStep, smoothBump } from "./displacement.ts";
import { integrate } from "./quadrature.ts";

/** A making of contact by both limbs, one possibly later than the other. */
export interface LimbTouchdown {
  readonly time: number;
  readonly rightMinusLeftSeconds: number;
  /** First local maximum of the force after it: both limbs must carry by then. */
  readonly firstPeak: number;
}

/** A loss of contact by both limbs, one possibly earlier than the other. */
export interface LimbTakeoff {
  readonly time: number;
  readonly rightMinusLeftSeconds: number;
  /** Where the straight fall of the whole force begins. */
  readonly fallStart: number;
}

/** The right limb's share from an instant on. */
export interface ShareStage {
  readonly from: number;
  /** Eased in over this time; zero: at once. */
  readonly easeSeconds: number;
  readonly share: number;
  /** The share is wanted of the gross impulse from `from` to here, and the level is solved for; absent: it is the level. */
  readonly impulseTo?: number;
}

/** How two limbs divide a course. */
export interface SharingPlan {
  readonly startShare: number;
  readonly stages: readonly ShareStage[];
  readonly touchdowns: readonly LimbTouchdown[];
  readonly takeoffs: readonly LimbTakeoff[];
}

/** Force of each foot on its plate in continuous time; the two add up to the body's force. */
export interface SharedForces {
  left(time: number): number;
  right(time: number): number;
  readonly breaks: readonly number[];
}

const longestTakeoffDifference = 0.012;
const longestTouchdownDifference = 0.02;
/** The later limb takes up its share within this many times its delay. */
const joinFactor = 1.7;

/** The instant at which one limb makes or loses contact, from that of the body. */
export function limbInstant(event: LimbTouchdown | LimbTakeoff, side: Side, kind: "touchdown" | "takeoff"): number {
  const difference = event.rightMinusLeftSeconds;
  const isLater = side === "right" ? difference > 0 : difference < 0;
  const gap = Math.abs(difference);
  if (kind === "touchdown") return isLater ? event.time + gap : event.time;
  return isLater || gap === 0 ? event.time : event.time - gap;
}

/**
 * Divides the force of two legs. Levels of stages whose impulse is wanted are solved one after the other (linear), with
 * the earlier limb's departure and the later limb's arrival taken into account.
 * @throws RangeError when limbs differ by more than 12 ms at take-off or 20 ms at touchdown, or no level gives the share.
 */
export function shareBetweenLimbs(course: Course, plan: SharingPlan): SharedForces {
  const touchdowns = plan.touchdowns.map((event) => {
    const gap = Math.abs(event.rightMinusLeftSeconds);
    const late = event.time + gap;
    const joined = late + joinFactor * gap;
    if (gap > longestTouchdownDifference || joined > event.firstPeak) {
      throw new RangeError(`Limbs cannot land ${event.rightMinusLeftSeconds} s apart.`);
    }
    return { ...event, late, joined, rightIsLate: event.rightMinusLeftSeconds > 0 };
  });
  const takeoffs = plan.takeoffs.map((event) => {
    const gap = Math.abs(event.rightMinusLeftSeconds);
    if (gap > longestTakeoffDifference) {
      throw new RangeError(`Limbs cannot leave ${event.rightMinusLeftSeconds} s apart.`);
    }
    const lineStart = Math.min(event.fallStart, event.time - 3 * gap);
    return { ...event, gap, lineStart, early: event.time - gap, rightIsEarly: event.rightMinusLeftSeconds < 0 };
  });
  const levels: number[] = [];
  const shareAt = (time: number): number => {
    let share = plan.startShare;
    // Counted, because this is asked for every sample and every point of an integral.
    for (let index = 0; index < levels.length; index += 1) {
      const stage = plan.stages[index];
      const level = levels[index];
      if (stage === undefined || level === undefined || time < stage.from) break;
      share += (level - share) * (stage.easeSeconds === 0 ? 1 : quinticStep(time, stage.from, stage.easeSeconds)[0]);
    }
    return share;
  };
  const right = (time: number): number => {
    const total = course.force(time);
    if (total === 0) return 0;
    for (const { gap, lineStart, early, rightIsEarly, time: takeoff } of takeoffs) {
      if (gap === 0 || time <= lineStart || time >= takeoff) continue;
      const shareThere = shareAt(lineStart);
      const there = (rightIsEarly ? shareThere : 1 - shareThere) * course.force(lineStart);
      const remaining = Math.max(0, (there * (early - time)) / (early - lineStart));
      return rightIsEarly ? remaining : total - remaining;
    }
    const share = shareAt(time);
    for (const { late, joined, rightIsLate, time: touchdown } of touchdowns) {
      if (time <= touchdown || time >= joined) continue;
      const u = Math.max(0, (time - late) / (joined - late));
      const arriving = (rightIsLate ? share : 1 - share) * total * u * (2 - u);
      return rightIsLate ? arriving : total - arriving;
    }
    return share * total;
  };
  const breaks = [
    ...course.breaks,
    ...plan.stages.flatMap((stage) => [stage.from, stage.from + stage.easeSeconds]),
    ...takeoffs.flatMap((each) => [each.lineStart, each.early]),
    ...touchdowns.flatMap((each) => [each.late, each.joined]),
  ];
  for (const stage of plan.stages) {
    if (stage.impulseTo === undefined) {
      levels.push(stage.share);
      continue;
    }
    const to = stage.impulseTo;
    const impulseWith = (level: number): number => {
      levels.push(level);
      const impulse = integrate(right, stage.from, to, breaks);
      levels.pop();
      return impulse;
    };
    const atZero = impulseWith(0);
    const wanted = stage.share * integrate(course.force, stage.from, to, breaks);
    const level = (wanted - atZero) / (impulseWith(1) - atZero);
    if (level < 0 || level > 1) throw new RangeError(`No sharing gives the right limb ${stage.share} of this impulse.`);
    levels.push(level);
  }
  return { right, left: (time) => course.force(time) - right(time), breaks };
}

/** What the foot that should not work does. */
export interface OtherFoot {
  /** Presses for a while: 0 to this many newtons and back. */
  readonly presses: readonly { readonly newtons: number; readonly from: number; readonly seconds: number }[];
  /** Comes down and carries half from here on, eased in over the seconds. */
  readonly carriesHalf?: { readonly from: number; readonly seconds: number };
}

/** One leg: it carries everything, less what the other foot takes. */
export function loadOneLimb(course: Course, limb: Side, { presses, carriesHalf }: OtherFoot): SharedForces {
  const other = (time: number): number => {
    let force = 0;
    for (const { newtons, from, seconds } of presses) force += newtons * smoothBump(time, from, seconds)[0];
    if (carriesHalf !== undefined && time > carriesHalf.from) {
      force += 0.5 * quinticStep(time, carriesHalf.from, carriesHalf.seconds)[0] * course.force(time);
    }
    return force;
  };
  const working = (time: number): number => course.force(time) - other(time);
  const breaks = [
    ...course.breaks,
    ...presses.flatMap((press) => [press.from, press.from + press.seconds]),
    ...(carriesHalf === undefined ? [] : [carriesHalf.from, carriesHalf.from + carriesHalf.seconds]),
  ];
  return limb === "left" ? { left: working, right: other, breaks } : { left: other, right: working, breaks };
}
