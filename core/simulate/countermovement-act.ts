import type { Act } from "./act.ts";
import { buildBody } from "./body.ts";
import { describeLimbPhase } from "./drop-truth.ts";
import { lawOfPieces } from "./law.ts";
import type { JumpOptions } from "./options.ts";
import { findMaximum } from "./quadrature.ts";
import { createRandom } from "./random.ts";
import { findRoot } from "./solve.ts";
import type { StandingJumpOptions } from "./standing-jump.ts";
import { limbEventsOfJump, planStandingJump, solveFlightAndLanding } from "./standing-jump.ts";
import type { JumpTruth } from "./truth.ts";

/** A countermovement jump as a part of a longer recording. */
export type CountermovementActOptions = StandingJumpOptions &
  Pick<
    JumpOptions,
    | "gravity"
    | "jumpHeightMetres"
    | "pushShape"
    | "timeToTakeoffSeconds"
    | "depthMetres"
    | "unweightingMinimum"
    | "positionAtTakeoffMetres"
    | "takeoffRateNewtonsPerSecond"
    | "riseBeforeDip"
  >;

/** A countermovement jump from standing to standing, with the same laws as one alone in its recording. */
export function countermovementAct(options: CountermovementActOptions): Act<JumpTruth> {
  // Built alone and still, only for its laws; the recording's own sway comes from the whole.
  const body = buildBody({ ...options, seed: 0, rateHz: 1, plates: "one" }, 0, createRandom(0));
  const { gravity, push, takeoffVelocity } = body;
  const after = solveFlightAndLanding(options, gravity, takeoffVelocity, body.positionAtTakeoff);
  return {
    laws: [lawOfPieces(push.force, push.motion), ...after.laws],
    plan: (starts) => {
      const [firstMovement = 0, takeoff = 0] = starts;
      return planStandingJump(
        options,
        {
          firstMovement,
          brakingStart: firstMovement + body.times.endOfUnweighting,
          lowestPosition: firstMovement + push.lowestPosition,
          takeoff,
          fallStart: firstMovement + push.fallStart,
        },
        after,
        starts,
      );
    },
    describe: ({ course, limbs }, starts, plan) => {
      const [firstMovement = Number.NaN, takeoff = Number.NaN, touchdown = Number.NaN] = starts;
      const net = (time: number): number => course.force(time) - course.weightNewtons;
      const endOfUnweighting = findRoot(net, firstMovement + push.riseStart, firstMovement + push.riseEnd);
      const lowestPosition =
        endOfUnweighting === undefined ? undefined : findRoot(course.velocity, endOfUnweighting, takeoff - 1e-6);
      if (endOfUnweighting === undefined || lowestPosition === undefined) {
        throw new RangeError("The dip of this jump is too small to have a lowest position.");
      }
      const landingEnd = touchdown + after.landing.restAfter;
      const power = (time: number): number => course.force(time) * course.velocity(time);
      const phase = (from: number, to: number) => describeLimbPhase(course, limbs, from, to);
      return {
        massKg: options.massKg,
        gravity,
        bodyWeightNewtons: course.weightNewtons,
        events: {
          firstMovement,
          endOfUnweighting,
          lowestPosition,
          takeoff,
          touchdown,
          landingEnd,
          standingAgain: starts.at(-1) ?? Number.NaN,
        },
        limbEvents: limbEventsOfJump(options.limb, plan),
        takeoffVelocity,
        touchdownVelocity: after.touchdownVelocity,
        jumpHeightMetres: takeoffVelocity ** 2 / (2 * gravity),
        flightSeconds: touchdown - takeoff,
        timeToTakeoffSeconds: takeoff - firstMovement,
        depthMetres: -course.position(lowestPosition),
        positionAtTakeoffMetres: body.positionAtTakeoff,
        positionAtTouchdownMetres: after.positionAtTouchdown,
        phases: {
          unweighting: phase(firstMovement, endOfUnweighting),
          braking: phase(endOfUnweighting, lowestPosition),
          propulsion: phase(lowestPosition, takeoff),
          landing: phase(touchdown, landingEnd),
        },
        forceAtLowestPositionNewtons: course.force(lowestPosition),
        peakPropulsionPowerWatts: findMaximum(power, lowestPosition, takeoff).value,
        peakBrakingPowerWatts: -findMaximum((time) => -power(time), endOfUnweighting, lowestPosition).value,
        takeoffRateNewtonsPerSecond: body.takeoffRateNewtonsPerSecond,
        touchdownRateNewtonsPerSecond: body.touchdownRateNewtonsPerSecond,
      };
    },
  };
}
