import type { RecordingOptions } from "./act.ts";
import type { RightShares } from "./options.ts";
import type { ContactShapeName, LandingShapeName } from "./shapes.ts";

/** One hop: a contact and the flight that follows. */
export interface HopWishes {
  readonly contactSeconds: number;
  /** Rise of the centre of mass after it, v²/2g. */
  readonly jumpHeightMetres: number;
  readonly contactShape?: ContactShapeName;
}

/** Everything that can be asked of simulated repeated hops. SI units; absent parts take plausible values. */
export interface HopsOptions extends RecordingOptions {
  /** Height of the countermovement jump that begins the bout. */
  readonly entryHeightMetres: number;
  readonly hops: readonly HopWishes[];
  readonly landingShape?: LandingShapeName;
  readonly positionAtTakeoffMetres?: number;
  /** How much lower than at the take-off before it the centre of mass is at each touchdown. */
  readonly touchdownLowerMetres?: number;
  readonly touchdownRateNewtonsPerSecond?: number;
  readonly takeoffRateNewtonsPerSecond?: number;
  /** Straight start of every contact, in body weights. Absent: 0.4; zero: curved from the start. */
  readonly straightTo?: number;
  readonly rightShares?: RightShares;
  /** Right minus left at every take-off and touchdown of the hops. */
  readonly limbTakeoffDifferenceSeconds?: number;
  readonly limbTouchdownDifferenceSeconds?: number;
  readonly emptySecondsBefore?: number;
  readonly quietSecondsBefore?: number;
  readonly quietSecondsAfter?: number;
  readonly emptySecondsAfter?: number;
}
