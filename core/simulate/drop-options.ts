import type { Side } from "../ground/limb.ts";
import type { RecordingOptions } from "./act.ts";
import type { RightShares } from "./options.ts";
import type { ContactShapeName, LandingShapeName } from "./shapes.ts";

/** What drop jumps and drop landings have in common. SI units; absent parts take plausible values. */
export interface DropOptions extends RecordingOptions {
  /** Height of the box. Only stated: what the body does follows from the effective drop height. */
  readonly boxHeightMetres: number;
  /** v²/2g at the first touchdown. Absent: nine tenths of the box. */
  readonly dropHeightEffectiveMetres?: number;
  readonly landingShape?: LandingShapeName;
  /** Rate at which force meets the plate, 10000 to 100000 N/s. */
  readonly touchdownRateNewtonsPerSecond?: number;
  /** Force up to which both touchdowns are straight lines, in body weights. Absent: 0.4; zero: curved from the start. */
  readonly straightTo?: number;
  readonly emptySecondsBefore?: number;
  readonly quietSecondsAfter?: number;
  /** After the quiet standing the athlete steps off, and the empty plate is recorded for this long. */
  readonly emptySecondsAfter?: number;
  /** The recording ends this long after the last touchdown. */
  readonly endsAfterTouchdownSeconds?: number;

  /** Two legs: the leg that stepped off the box; it lands first. */
  readonly leadingLeg?: Side;
  /** How much earlier it lands. Absent: 4 ms. */
  readonly leadingFirstSeconds?: number;
  /** Single-leg only: after the last landing the athlete stands on both feet. */
  readonly standsOnBothAfterLanding?: boolean;
}

/** Everything that can be asked of a simulated drop jump. */
export interface DropJumpOptions extends DropOptions {
  /** Rise of the centre of mass after take-off, v²/2g. `heightForFlightTimeHeight` gives it for a wanted g·t²/8. */
  readonly jumpHeightMetres: number;
  readonly contactSeconds: number;
  readonly contactShape?: ContactShapeName;
  readonly positionAtTakeoffMetres?: number;
  /** How much lower than at take-off the centre of mass is at the first touchdown (the half sine decides it itself). */
  readonly contactLowerMetres?: number;
  /** How much lower than at take-off it is at the landing. */
  readonly touchdownLowerMetres?: number;
  /** Rate at which force leaves the plate, 5000 to 30000 N/s. */
  readonly takeoffRateNewtonsPerSecond?: number;
  /** Meeting the plate at the landing. Absent: the landing shape's own. */
  readonly landingRateNewtonsPerSecond?: number;

  /** Two legs. Braking and propulsion of the contact, gross; the landing peak included in landing. */
  readonly rightShares?: RightShares;
  /** Added to the leading leg's share of the braking impulse. Absent: 0.03. */
  readonly leadingBrakingGain?: number;
  /** Right minus left, at most 12 ms either way. */
  readonly limbTakeoffDifferenceSeconds?: number;
  /** Right minus left at the landing, at most 20 ms either way. */
  readonly limbLandingDifferenceSeconds?: number;

  /** Single-leg only: the other foot presses this much during the contact. */
  readonly otherFootNewtons?: number;
  /** After the landing the body leaves the plate once more, for this long, before it stands. */
  readonly bounceFlightSeconds?: number;
  /** The athlete comes down beside the plates after the jump. */
  readonly landsBesidePlates?: boolean;
}

/** The rise v²/2g whose flight lasts as long as that of a jump of height g·t²/8 with equal ends, landing lower by some. */
export function heightForFlightTimeHeight(flightTimeHeight: number, landsLowerMetres: number): number {
  // Flight time t and fall d: v = g·t/2 − d/t; with g·t² = 8H the rise v²/2g is (4H − d)²/(16H).
  return (4 * flightTimeHeight - landsLowerMetres) ** 2 / (16 * flightTimeHeight);
}
