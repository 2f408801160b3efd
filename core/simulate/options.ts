import type { Limb } from "../ground/limb.ts";
import type { LandingShapeName, PushShapeName } from "./shapes.ts";

/** Part of the total force that the right limb carries (0 to 1) in each stretch of a two-leg jump. */
export interface RightShares {
  readonly standing: number;
  /** Of the gross braking impulse. */
  readonly braking: number;
  /** Of the gross propulsion impulse. */
  readonly propulsion: number;
  /** Of the landing, its peak included. */
  readonly landing: number;
}

/** A decaying oscillation of the plate after loss and making of contact. */
export interface Ringing {
  readonly newtons: number;
  readonly frequencyHz: number;
  readonly decaySeconds: number;
}

/** Everything that can be asked of a simulated countermovement jump. SI units; absent parts take plausible values. */
export interface JumpOptions {
  /** Fixes every random part. Even seeds are for tuning, odd seeds for the final tables (`isFinalSeed`). */
  readonly seed: number;
  readonly rateHz: number;
  readonly massKg: number;
  readonly gravity?: number;
  readonly limb: Limb;
  readonly plates: "one" | "two";

  /** Rise of the centre of mass after take-off, v²/2g. */
  readonly jumpHeightMetres: number;
  readonly pushShape?: PushShapeName;
  readonly landingShape?: LandingShapeName;
  /** First movement to take-off. */
  readonly timeToTakeoffSeconds?: number;
  /** Absent: follows from the unweighting minimum. */
  readonly depthMetres?: number;
  /** Least force of the unweighting in body weights; only where no depth is given. */
  readonly unweightingMinimum?: number;
  readonly positionAtTakeoffMetres?: number;
  /** How much lower than at take-off the centre of mass is at touchdown. */
  readonly touchdownLowerMetres?: number;
  /** Rate at which force leaves the plate, 5000 to 30000 N/s. */
  readonly takeoffRateNewtonsPerSecond?: number;
  /** Rate at which force meets the plate, 10000 to 100000 N/s. */
  readonly touchdownRateNewtonsPerSecond?: number;
  /** Force up to which the landing begins as a straight line, in body weights. Absent: a curve from the start. */
  readonly straightTo?: number;
  readonly quietSecondsBefore?: number;
  readonly quietSecondsAfter?: number;

  readonly rightShares?: RightShares;
  /** Right minus left; the limb that leaves earlier falls to zero along a line. At most 0.012 s either way. */
  readonly limbTakeoffDifferenceSeconds?: number;
  /** Right minus left. At most 0.006 s either way. */
  readonly limbTouchdownDifferenceSeconds?: number;

  /** Absent: no sway. */
  readonly swayMetres?: number;
  /** Lowest and highest frequency of the sway. Absent: the whole spectrum. */
  readonly swayBandHz?: readonly [number, number];
  /** Standard deviation of white noise on each plate. Absent: none. */
  readonly plateNoiseNewtons?: number;
  readonly ringing?: Ringing;
  readonly quantisationNewtons?: number;

  /** A short rise above body weight before the dip; it is the first intended movement then. */
  readonly riseBeforeDip?: { readonly weightFraction: number; readonly seconds: number };
  /** A shift of the weight between the feet while standing, over before the first movement. */
  readonly weightShift?: {
    readonly metres: number;
    readonly rightShareChange: number;
    readonly seconds: number;
    readonly endsBeforeSeconds: number;
  };
  /** A hand on a rail carries this part of the weight before the jump and lets go during the dip. */
  readonly railWeightFraction?: number;
  /** Empty plate before the athlete steps on, ahead of the quiet standing. */
  readonly emptySecondsBefore?: number;
  /** After the quiet standing the athlete steps off, and the empty plate is recorded for this long. */
  readonly emptySecondsAfter?: number;
  /** Single-leg only: the other foot presses this much during the push. */
  readonly otherFootNewtons?: number;
  /**
   * The free leg swings up and back: it lifts the centre of mass by so much and lets it down again, so force dips once
   * more. The middle of the swing is counted from the first movement of the push: negative before it, else during it.
   * Over before take-off.
   */
  readonly legSwing?: { readonly metres: number; readonly seconds: number; readonly middleSeconds: number };
  /** Single-leg only: after landing the athlete stands on both feet. */
  readonly standsOnBothAfterLanding?: boolean;
  /** The athlete comes down beside the plates. */
  readonly landsBesidePlates?: boolean;
  /** The recording begins this long after the first movement. */
  readonly startsAfterFirstMovementSeconds?: number;
  /** The recording ends this long after touchdown. */
  readonly endsAfterTouchdownSeconds?: number;
  /** Largest force a plate can show. */
  readonly clipNewtons?: number;
  /** Constant error of each plate, in the order of the plates. */
  readonly plateOffsetsNewtons?: readonly number[];
  /** Drift of each plate in newtons a second from the first sample on, in the order of the plates. */
  readonly plateDriftsNewtonsPerSecond?: readonly number[];
  /** Mains hum: amplitude and frequency, each plate at its own phase. */
  readonly hum?: { readonly newtons: number; readonly frequencyHz: number };
  /** Downward force is recorded as negative. */
  readonly signTurned?: boolean;
  /** Two plates: the athlete faced the wrong way, so the right foot stood on the plate named left. */
  readonly facedWrongWay?: boolean;
}

/** Half of all seeds are kept for the final tables: the odd ones. Detectors are tuned on even seeds only. */
export function isFinalSeed(seed: number): boolean {
  return Math.abs(seed) % 2 === 1;
}

/** The right limb's part of the total when the index (involved over uninvolved, per cent) is wanted. */
export function rightShareFromIndex(indexPercent: number, involved: "left" | "right"): number {
  const involvedShare = indexPercent / (100 + indexPercent);
  return involved === "right" ? involvedShare : 1 - involvedShare;
}
