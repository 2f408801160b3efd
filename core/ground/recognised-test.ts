import type { TestKind } from "./test-kind.ts";

/** What the plates carried before an attempt. */
export type BeforeAttempt = "standing on the plate" | "empty plate";

/** What a trace shows of the test it is of. */
export type TraceSeen =
  | { readonly seen: "impact"; readonly before: BeforeAttempt }
  | { readonly seen: "flights"; readonly before: BeforeAttempt; readonly flights: number }
  | {
      readonly seen: "contact";
      readonly before: BeforeAttempt;
      readonly contactSeconds: number;
      readonly flightSeconds: number;
    }
  /** Force falls to this part of body weight before the push. */
  | {
      readonly seen: "dip";
      readonly before: BeforeAttempt;
      readonly weightFraction: number;
      readonly flightSeconds: number;
    }
  | { readonly seen: "no dip"; readonly before: BeforeAttempt; readonly flightSeconds: number };

/** Why a trace is offered as no test. */
export type WhyNoTest =
  /** The plate is empty for longer than people fly. */
  | { readonly why: "empty too long"; readonly mostSeconds: number; readonly heightMetres: number }
  /** As the test it looks like it would be refused. */
  | { readonly why: "refused"; readonly test: TestKind }
  /** As when somebody walks across the plate. */
  | { readonly why: "walked across" }
  | {
      readonly why: "event missing";
      readonly missing: "onset" | "turning point" | "take-off" | "touchdown" | "hop";
      readonly seconds: number;
    }
  /** The push gives the body another speed than its flight takes. */
  | {
      readonly why: "push unlike flight";
      readonly pushedMetresPerSecond: number;
      readonly flownMetresPerSecond: number;
    }
  /** The contact carries less than the athlete weighs. */
  | { readonly why: "step"; readonly meanNewtons: number; readonly weightNewtons: number };

/** What a trace looks like by itself. */
export interface RecognisedTest {
  readonly test: TestKind;
  readonly trace: TraceSeen;
}

/** A trace that is offered as no test. */
export interface NotOffered {
  readonly test?: undefined;
  readonly against: WhyNoTest;
}
