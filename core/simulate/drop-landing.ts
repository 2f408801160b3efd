import type { Side } from "../ground/limb.ts";
import type { Act, RecordedActs } from "./act.ts";
import { limbInstants, recordActs, standardGravity } from "./act.ts";
import { afterLandingActs } from "./drop-jump.ts";
import type { DropOptions } from "./drop-options.ts";
import type { LimbPhaseTruth } from "./drop-truth.ts";
import { describeLimbPhase } from "./drop-truth.ts";
import { solveLandingSequence } from "./landing-sequence.ts";
import { fallLaw } from "./law.ts";
import type { LimbTouchdown } from "./limb-sharing.ts";
import { landingShapes } from "./shapes.ts";

/** Everything that can be asked of a simulated drop landing. */
export interface DropLandingOptions extends DropOptions {
  readonly positionAtTouchdownMetres?: number;
  /** Two legs: the right limb's share of the landing, its peak included, and of the standing after it. */
  readonly rightShares?: { readonly landing: number; readonly standing: number };
  /** After the landing the body leaves the plate once more, for this long, before it stands. */
  readonly bounceFlightSeconds?: number;
}

/** What really happened in a drop landing, in exact continuous time. Seconds from the first sample. */
export interface DropLandingTruth {
  readonly massKg: number;
  readonly gravity: number;
  readonly bodyWeightNewtons: number;
  readonly boxHeightMetres: number;
  readonly dropHeightEffectiveMetres: number;
  readonly leadingLeg?: Side;
  readonly events: { readonly touchdown: number; readonly landingEnd: number; readonly standingAgain: number };
  /** Each working limb's own making of contact. */
  readonly limbTouchdowns: Readonly<Partial<Record<Side, number>>>;
  /** Negative. */
  readonly touchdownVelocity: number;
  readonly positionAtTouchdownMetres: number;
  readonly positionLowestMetres: number;
  readonly landing: LimbPhaseTruth;
}

/** A simulated drop landing and what really happened in it. */
export interface SimulatedDropLanding extends Omit<RecordedActs<unknown>, "truths"> {
  readonly truth: DropLandingTruth;
}

/**
 * Simulates a drop landing: the body falls onto an empty plate, comes to rest and stands.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateDropLanding(options: DropLandingOptions): SimulatedDropLanding {
  const cut = options.endsAfterTouchdownSeconds;
  const { truths, ...recording } = recordActs(
    options,
    options.rightShares?.landing ?? 0.5,
    [dropLandingAct(options), ...afterLandingActs(options)],
    cut === undefined ? undefined : (plans) => (plans[0]?.touchdowns?.[0]?.time ?? Number.NaN) + cut,
  );
  const truth = truths[0];
  if (truth === undefined) throw new Error("The first act is the landing.");
  return { ...recording, truth };
}

/** A drop landing as a part of a recording: from the empty plate to standing. */
export function dropLandingAct(options: DropLandingOptions): Act<DropLandingTruth> {
  const gravity = options.gravity ?? standardGravity;
  const weightNewtons = options.massKg * gravity;
  const two = options.limb === "both";
  const effective = options.dropHeightEffectiveMetres ?? 0.9 * options.boxHeightMetres;
  const touchdownVelocity = -Math.sqrt(2 * gravity * effective);
  const positionAtTouchdown = options.positionAtTouchdownMetres ?? (two ? 0.095 : 0.075);
  const shape = landingShapes[options.landingShape ?? "ordinary"];
  const rate = Math.min(Math.max(shape.ratePerSecond * weightNewtons, 11000), 98000);
  const landing = solveLandingSequence({
    shape,
    gravity,
    weightNewtons,
    touchdownVelocity,
    positionAtTouchdown,
    touchdownRateNewtonsPerSecond: options.touchdownRateNewtonsPerSecond ?? rate,
    straightTo: options.straightTo ?? 0.4,
    ...(options.bounceFlightSeconds === undefined ? {} : { bounceFlightSeconds: options.bounceFlightSeconds }),
  });
  const lead = options.leadingLeg === undefined || !two ? 0 : options.leadingLeg === "left" ? 1 : -1;
  const shares = options.rightShares ?? { landing: 0.5, standing: 0.5 };
  return {
    laws: [
      fallLaw(options.emptySecondsBefore ?? 1.2, touchdownVelocity, positionAtTouchdown, gravity),
      ...landing.laws,
    ],
    plan: (starts) => {
      const [start = 0, touchdown = Number.NaN] = starts;
      const lastTouchdown = starts.at(-2) ?? Number.NaN;
      const settled = lastTouchdown + landing.lastRestAfter;
      const settleSeconds = (starts.at(-1) ?? Number.NaN) - settled;
      const making = (time: number, difference: number, peakAfter: number): LimbTouchdown => ({
        time,
        rightMinusLeftSeconds: difference,
        firstPeak: time + peakAfter,
      });
      return {
        stages: [
          { from: touchdown, easeSeconds: 0, share: shares.landing },
          { from: settled, easeSeconds: settleSeconds, share: shares.standing },
        ],
        touchdowns: [
          making(touchdown, lead * (options.leadingFirstSeconds ?? 0.004), landing.firstPeakAfter),
          ...(landing.laws.length > 1 ? [making(lastTouchdown, 0, landing.lastFirstPeakAfter)] : []),
        ],
        gate: { fadeStart: start - 0.5, fadeSeconds: 0.5, returnStart: settled, returnSeconds: settleSeconds },
        presence: [{ at: start, seconds: 0, on: true }],
        ...(options.standsOnBothAfterLanding === true
          ? { carriesHalf: { from: settled, seconds: settleSeconds } }
          : {}),
      };
    },
    describe: ({ course, limbs }, starts, plan) => {
      const [, touchdown = Number.NaN] = starts;
      const landingEnd = touchdown + landing.restAfter;
      const first = plan.touchdowns?.[0];
      return {
        massKg: options.massKg,
        gravity,
        bodyWeightNewtons: weightNewtons,
        boxHeightMetres: options.boxHeightMetres,
        dropHeightEffectiveMetres: effective,
        ...(options.leadingLeg === undefined ? {} : { leadingLeg: options.leadingLeg }),
        events: { touchdown, landingEnd, standingAgain: starts.at(-1) ?? Number.NaN },
        limbTouchdowns: first === undefined ? {} : limbInstants(options.limb, first, "touchdown"),
        touchdownVelocity,
        positionAtTouchdownMetres: positionAtTouchdown,
        positionLowestMetres: course.position(landingEnd),
        landing: describeLimbPhase(course, limbs, touchdown, landingEnd),
      };
    },
  };
}
