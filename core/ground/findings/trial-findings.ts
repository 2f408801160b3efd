import type { Limb } from "../limb.ts";
import type { NotOffered, RecognisedTest } from "../recognised-test.ts";
import type { TestKind } from "../test-kind.ts";
import type { SignalFindings } from "./signal-findings.ts";

/** What a trace shows against the test that its trial is called. */
export type AgainstTest =
  | { readonly shows: "athlete on the plate" }
  | { readonly shows: "no flight" }
  | { readonly shows: "empty plate" }
  /** Force does not dip by this part of body weight before the push. */
  | { readonly shows: "no dip"; readonly weightFraction: number }
  | { readonly shows: "another jump" }
  | { readonly shows: "no flight after a contact" }
  | { readonly shows: "one flight" };

/** The figures of what is found in `core/trial`. */
export interface TrialFindings extends SignalFindings {
  readonly "test-not-stated": { readonly recognised?: RecognisedTest | NotOffered };
  readonly "limb-not-stated": Readonly<Record<never, never>>;
  readonly "test-from-name": { readonly test?: TestKind; readonly limb?: Limb };
  readonly "test-contradicts/trace": {
    readonly test: TestKind;
    readonly against: AgainstTest;
    readonly recognised: RecognisedTest;
  };
  /** A steady load that is not the weight the athlete was weighed at. */
  readonly "load-changes": {
    readonly newtons: number;
    readonly fromSeconds: number;
    readonly toSeconds: number;
    readonly weighedNewtons: number;
    readonly weighedFromSeconds: number;
    readonly weighedToSeconds: number;
  };
  readonly "no-quiet-standing/recording": { readonly seconds: number };
  readonly "no-landing": { readonly seconds: number };
  readonly "no-takeoff/never": { readonly seconds: number };
  /** The plate empties, but not after a push. */
  readonly "no-takeoff/step": { readonly seconds: number; readonly steadyNewtons: number };
  readonly "broken-off/only": { readonly fromSeconds: number; readonly toSeconds: number };
  readonly "broken-off/before-jump": { readonly fromSeconds: number; readonly toSeconds: number };
  /** A load at rest too small for an athlete. */
  readonly "weight-implausible/light": {
    readonly newtons: number;
    readonly massKg: number;
    readonly leastNewtons: number;
    readonly mostNewtons: number;
  };
}
