import type { EventName } from "../event-name.ts";
import type { Limb } from "../limb.ts";
import type { TestKind } from "../test-kind.ts";

/** The figures of what is found in `core/session`. */
export interface SessionFindings {
  /** Body mass is far from the last session's although little time has passed. */
  readonly "mass-changed": {
    readonly massKg: number;
    readonly earlierKg: number;
    readonly earlierFrom: "entered" | "weighed";
    /** ISO date of the earlier session, and how many days before it was. */
    readonly earlierDate: string;
    readonly days: number;
  };
  /** Force never was at body weight before the movement. */
  readonly "starts-moving/onset": NoFigures;
  readonly "starts-moving/weight": {
    readonly takeoffSeconds: number;
    readonly landed: boolean;
    readonly costs: WeightCosts;
  };
  readonly "starts-moving/mid-movement": { readonly takeoffSeconds: number };
  readonly "other-foot-touching/weight": WeightUnknown;
  readonly "no-quiet-standing/weight": WeightUnknown;
  readonly "landing-off-plate/weight": WeightUnknown;
  readonly "no-quiet-standing/velocity": { readonly landingSeconds: number };
  readonly "landing-off-plate/velocity": { readonly takeoffSeconds: number };
  readonly "event-not-found": { readonly missing: string; readonly seconds: number; readonly test: TestKind };
  readonly "session-entry-unused/edit": MovedEvent & { readonly isNoEvent: boolean };
  readonly "event-moved": MovedEvent & { readonly standsSeconds: number };
  readonly "weight-implausible": { readonly massKg: number };
  /** Name of the recording that it is a copy of. */
  readonly "recording-repeated": { readonly first: string };
  readonly "several-athletes": { readonly lightestKg: number; readonly heaviestKg: number; readonly ownKg?: number };
  /** A plain clause that completes "… because it". */
  readonly "unreadable/file": { readonly reason: string };
  readonly "unreadable/changed": NoFigures;
  readonly "session-unreadable/file": { readonly reason: string };
  readonly "heights-contradict": { readonly byImpulseMetres: number; readonly byFlightMetres: number };
  readonly "test-contradicts/two-legs": NoFigures;
  readonly "test-contradicts/one-leg": { readonly limb: Limb };
}

type NoFigures = Readonly<Record<never, never>>;

/** What an unknown weight costs: the trial, or what needs it. */
export type WeightCosts = "everything" | "what needs weight";

export interface WeightUnknown {
  readonly landingSeconds: number;
  readonly costs: WeightCosts;
  /** Why no other trial may tell the weight, a clause that follows "because". */
  readonly notPooled?: string;
}

export interface MovedEvent {
  readonly name: EventName;
  readonly contactIndex?: number;
  readonly wantedSeconds: number;
}
