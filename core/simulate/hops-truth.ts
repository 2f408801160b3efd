import type { Side } from "../ground/limb.ts";
import type { LimbPhaseTruth } from "./drop-truth.ts";

/** What really happened in one contact. Without a take-off: the last, unfollowed one, in which the athlete lands. */
export interface HopTruth {
  /** Counted from 1: the contact after the entry jump is the first. */
  readonly contactIndex: number;
  readonly touchdown: number;
  readonly lowestPosition: number;
  readonly limbTouchdowns: Readonly<Partial<Record<Side, number>>>;
  /** Negative. */
  readonly touchdownVelocity: number;
  /** Present where a flight follows. */
  readonly hop?: {
    readonly takeoff: number;
    readonly limbTakeoffs: Readonly<Partial<Record<Side, number>>>;
    readonly contactSeconds: number;
    readonly flightSeconds: number;
    readonly takeoffVelocity: number;
    /** v²/2g after take-off, and g·t²/8 of the flight that follows. */
    readonly jumpHeightMetres: number;
    readonly jumpHeightFlightTimeMetres: number;
    /** Flight-time height over contact time. */
    readonly reactiveStrengthIndex: number;
    readonly braking: LimbPhaseTruth;
    readonly propulsion: LimbPhaseTruth;
    /** Of the half sine only: largest force over the fall of the centre of mass. */
    readonly springStiffnessNewtonsPerMetre?: number;
  };
}

/** What really happened in a bout of hops, in exact continuous time. Seconds from the first sample. */
export interface HopsTruth {
  readonly massKg: number;
  readonly gravity: number;
  readonly bodyWeightNewtons: number;
  readonly events: {
    readonly firstMovement: number;
    readonly entryTakeoff: number;
    readonly landingEnd: number;
    readonly standingAgain: number;
  };
  readonly entryHeightMetres: number;
  /** Contacts followed by a flight, then the last one. */
  readonly contacts: readonly HopTruth[];
}
