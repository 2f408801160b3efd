import type { Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { Kinematics } from "./kinematics.ts";

/**
 * Events of a trial as fractional samples from the start of the recording, in order of time. Which of them a trial
 * has follows from its test and from what the recording holds.
 */
export interface JumpEvents {
  /** Standing starts only. */
  readonly onset?: number;
  /** Countermovement jump only. */
  readonly endOfUnweighting?: number;
  /** Touchdown of the contact before the flight: drop jump only. */
  readonly contactTouchdown?: number;
  readonly lowestPosition?: number;
  /** Absent in a drop landing. */
  readonly takeoff?: number;
  /** Touchdown of the landing; absent when the recording holds none. */
  readonly touchdown?: number;
  /** Absent when the recording ends before velocity returns to zero. */
  readonly landingEnd?: number;
}

export type EventKey = keyof JumpEvents;

/** The keys in order of time. */
export const eventKeys = [
  "onset",
  "endOfUnweighting",
  "contactTouchdown",
  "lowestPosition",
  "takeoff",
  "touchdown",
  "landingEnd",
] as const satisfies readonly EventKey[];

/** Contact events that are read from a plate's own force. */
export const contactKeys = ["contactTouchdown", "takeoff", "touchdown"] as const satisfies readonly EventKey[];

/** Standard uncertainties of contact events beyond sampling and shape, samples. */
export type EdgeSpreads = Partial<Readonly<Record<(typeof contactKeys)[number], number>>>;

/** Contact events of one limb on its own plate, fractional samples. */
export interface LimbContact extends Pick<JumpEvents, (typeof contactKeys)[number]> {
  readonly side: Side;
  readonly spreads?: EdgeSpreads;
}

/** One contact of repeated hops, fractional samples; the last one has no take-off. */
export interface HopContact {
  readonly touchdown: number;
  readonly takeoff?: number;
}

/** The contacts of repeated hops, with the take-off of the entry jump where it left this plate. */
export interface HopBout {
  readonly entryTakeoff?: number;
  readonly contacts: readonly HopContact[];
}

/**
 * How velocity and position are known: mean velocity zero in a window of quiet standing (position zero at onset or in
 * that window); zero at onset; or, where nobody stands still, gravity times half the flight time at take-off (position
 * zero at touchdown), and unknown where no flight on the plate tells that.
 */
export type Anchor =
  | { readonly kind: "still"; readonly window: SampleSpan; readonly positionZero: "onset" | "window" }
  | { readonly kind: "onset" }
  | { readonly kind: "flight" };

/** Everything the measures of a trial are made from. */
export interface JumpMotion {
  readonly test: TestKind;
  readonly motion: Kinematics;
  readonly anchor: Anchor;
  readonly events: JumpEvents;
  readonly contacts: readonly LimbContact[];
  readonly spreads?: EdgeSpreads;
  /** What a movement that begins gently adds to the uncertainty of the onset, samples. */
  readonly onsetDoubt?: number;
  /** Repeated hops only; their contacts stand here and not in `events`. */
  readonly hops?: HopBout;
}
