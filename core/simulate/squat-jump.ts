import type { Act, RecordedActs, RecordingOptions } from "./act.ts";
import { recordActs, standardGravity } from "./act.ts";
import { afterLandingActs } from "./drop-jump.ts";
import type { LimbPhaseTruth } from "./drop-truth.ts";
import { describeLimbPhase } from "./drop-truth.ts";
import { moveLaw, restLaw } from "./law.ts";
import { findMaximum } from "./quadrature.ts";
import { solveRise } from "./rise-law.ts";
import type { RiseShapeName } from "./shapes.ts";
import { riseShapes } from "./shapes.ts";
import { findRoot } from "./solve.ts";
import { standAct, stepOnAct } from "./standing-acts.ts";
import type { StandingJumpOptions } from "./standing-jump.ts";
import { limbEventsOfJump, planStandingJump, solveFlightAndLanding } from "./standing-jump.ts";

/** Everything that can be asked of a simulated squat jump. SI units; absent parts take plausible values. */
export interface SquatJumpOptions extends RecordingOptions, StandingJumpOptions {
  /** Rise of the centre of mass after take-off, v²/2g. */
  readonly jumpHeightMetres: number;
  /** How deep the hold is below standing. */
  readonly holdDepthMetres?: number;
  readonly holdSeconds?: number;
  /** How long going down to the hold takes. */
  readonly loweringSeconds?: number;
  readonly riseShape?: RiseShapeName;
  /** First movement to take-off. */
  readonly timeToTakeoffSeconds?: number;
  readonly positionAtTakeoffMetres?: number;
  readonly takeoffRateNewtonsPerSecond?: number;
  /** A dip before the rise: how far force falls below body weight, and for how long. */
  readonly dip?: { readonly weightFraction: number; readonly seconds: number };
  /** The recording begins in the hold, without standing and lowering. */
  readonly startsInHold?: boolean;
  readonly emptySecondsBefore?: number;
  readonly quietSecondsBefore?: number;
  readonly quietSecondsAfter?: number;
  readonly emptySecondsAfter?: number;
  readonly endsAfterTouchdownSeconds?: number;
}

/** What really happened in a squat jump, in exact continuous time. Seconds from the first sample. */
export interface SquatJumpTruth {
  readonly massKg: number;
  readonly gravity: number;
  readonly bodyWeightNewtons: number;
  readonly events: {
    /** The hold begins (the body is at rest at its depth). */
    readonly holdStart: number;
    /** First movement of the intended motion: of the dip where there is one, else of the rise. */
    readonly firstMovement: number;
    /** Zero velocity before the rise: after the dip where there is one, else the first movement. */
    readonly lowestPosition: number;
    readonly takeoff: number;
    readonly touchdown: number;
    readonly landingEnd: number;
    readonly standingAgain: number;
  };
  readonly limbEvents: ReturnType<typeof limbEventsOfJump>;
  readonly takeoffVelocity: number;
  /** Negative. */
  readonly touchdownVelocity: number;
  /** v²/2g after take-off. */
  readonly jumpHeightMetres: number;
  readonly flightSeconds: number;
  readonly timeToTakeoffSeconds: number;
  readonly holdDepthMetres: number;
  /** How far the dip goes below the hold; zero without one. */
  readonly dipMetres: number;
  /** How far force falls below body weight in it, as a part of it. */
  readonly dipWeightFraction: number;
  readonly positionAtTakeoffMetres: number;
  readonly positionAtTouchdownMetres: number;
  readonly phases: { readonly propulsion: LimbPhaseTruth; readonly landing: LimbPhaseTruth };
  readonly peakPropulsionPowerWatts: number;
}

/** A simulated squat jump and what really happened in it. */
export interface SimulatedSquatJump extends Omit<RecordedActs<unknown>, "truths"> {
  readonly truth: SquatJumpTruth;
}

/**
 * Simulates a squat jump: standing, going down, a hold, a rise, flight, landing, standing.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateSquatJump(options: SquatJumpOptions): SimulatedSquatJump {
  const before = options.emptySecondsBefore === undefined ? [] : [stepOnAct(options.emptySecondsBefore)];
  const acts: readonly Act<SquatJumpTruth | undefined>[] = [
    ...(options.startsInHold === true ? [] : [...before, standAct(options.quietSecondsBefore ?? 1)]),
    squatJumpAct(options),
    ...afterLandingActs(options),
  ];
  const cut = options.endsAfterTouchdownSeconds;
  const { truths, ...recording } = recordActs(
    options,
    options.rightShares?.standing ?? 0.5,
    acts,
    cut === undefined
      ? undefined
      : (plans) => (plans.flatMap((plan) => plan.touchdowns ?? [])[0]?.time ?? Number.NaN) + cut,
  );
  const truth = truths.find((each) => each !== undefined);
  if (truth === undefined) throw new Error("One of the acts is the squat jump.");
  return { ...recording, truth };
}

/** A squat jump as a part of a recording: from standing (or the hold) to standing. */
export function squatJumpAct(options: SquatJumpOptions): Act<SquatJumpTruth> {
  const gravity = options.gravity ?? standardGravity;
  const weightNewtons = options.massKg * gravity;
  const single = options.limb !== "both";
  const depth = options.holdDepthMetres ?? (single ? 0.24 : 0.34);
  const positionAtTakeoff = options.positionAtTakeoffMetres ?? (single ? 0.085 : 0.105);
  const takeoffVelocity = Math.sqrt(2 * gravity * options.jumpHeightMetres);
  const shape = riseShapes[options.riseShape ?? "even"];
  const dipSeconds = options.dip?.seconds ?? 0;
  const rise = solveRise({
    shape,
    gravity,
    // Half the take-off velocity is a usual mean velocity of a rise.
    seconds: options.timeToTakeoffSeconds ?? dipSeconds + (depth + positionAtTakeoff) / (0.52 * takeoffVelocity),
    takeoffVelocity,
    positionInHold: -depth,
    positionAtTakeoff,
    fallPerSecond:
      (options.takeoffRateNewtonsPerSecond ?? Math.min(Math.max(20 * weightNewtons, 5500), 29000)) / weightNewtons,
    ...(options.dip === undefined ? {} : { dip: options.dip }),
  });
  const after = solveFlightAndLanding(options, gravity, takeoffVelocity, positionAtTakeoff);
  const lowering = options.startsInHold === true ? [] : [moveLaw(options.loweringSeconds ?? 1.1, 0, -depth, gravity)];
  const first = lowering.length;
  const instants = (starts: readonly number[]) => {
    const firstMovement = starts[first + 1] ?? Number.NaN;
    return {
      firstMovement,
      brakingStart: firstMovement + rise.endOfDip,
      lowestPosition: firstMovement + rise.lowestPosition,
      takeoff: starts[first + 2] ?? Number.NaN,
      fallStart: firstMovement + rise.fallStart,
    };
  };
  return {
    laws: [...lowering, restLaw(options.holdSeconds ?? 2.4, -depth), rise, ...after.laws],
    plan: (starts) => planStandingJump(options, instants(starts), after, starts),
    describe: ({ course, limbs }, starts, plan) => {
      const { firstMovement, brakingStart, takeoff } = instants(starts);
      // With sway the velocity that passes zero is that of the whole motion.
      const lowestPosition =
        options.dip === undefined ? firstMovement : (findRoot(course.velocity, brakingStart, takeoff) ?? Number.NaN);
      const touchdown = starts[first + 3] ?? Number.NaN;
      const landingEnd = touchdown + after.landing.restAfter;
      return {
        massKg: options.massKg,
        gravity,
        bodyWeightNewtons: weightNewtons,
        events: {
          holdStart: starts[first] ?? Number.NaN,
          firstMovement,
          lowestPosition,
          takeoff,
          touchdown,
          landingEnd,
          standingAgain: starts.at(-1) ?? Number.NaN,
        },
        limbEvents: limbEventsOfJump(options.limb, plan),
        takeoffVelocity,
        touchdownVelocity: after.touchdownVelocity,
        jumpHeightMetres: options.jumpHeightMetres,
        flightSeconds: touchdown - takeoff,
        timeToTakeoffSeconds: takeoff - firstMovement,
        holdDepthMetres: depth,
        dipMetres: -depth - rise.position(rise.lowestPosition),
        dipWeightFraction: options.dip?.weightFraction ?? 0,
        positionAtTakeoffMetres: positionAtTakeoff,
        positionAtTouchdownMetres: after.positionAtTouchdown,
        phases: {
          propulsion: describeLimbPhase(course, limbs, lowestPosition, takeoff),
          landing: describeLimbPhase(course, limbs, touchdown, landingEnd),
        },
        peakPropulsionPowerWatts: findMaximum(
          (time) => course.force(time) * course.velocity(time),
          lowestPosition,
          takeoff,
        ).value,
      };
    },
  };
}
