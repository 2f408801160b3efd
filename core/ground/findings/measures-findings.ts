import type { Side } from "../limb.ts";
import type { MeasureId } from "../measures/catalogue.ts";
import type { LandingFindings } from "./landing-findings.ts";

/** How long force stays at its largest value. */
interface Clipped {
  readonly samples: number;
}

/** The figures of what is found in `core/measures`. */
export interface MeasureFindings extends LandingFindings {
  /** Measures that no other finding names; the finding removes them. */
  readonly "measure-not-made": { readonly measures: readonly MeasureId[] };
  readonly "clipped/hops": Clipped;
  readonly "clipped/before-takeoff": Clipped;
  readonly "clipped/only-landing": Clipped;
  readonly "clipped/landing": Clipped;
  readonly "heights-differ": { readonly byImpulseMetres: number; readonly byFlightMetres: number };
  /** Disagreement of summed impulses with momentum, as a part of the push. */
  readonly "self-check-broken": { readonly partOfPush: number };
  readonly "slow-contact": { readonly seconds: number; readonly limitSeconds: number };
  readonly "leading-leg-missing": Readonly<Record<never, never>>;
  readonly "drop-height-not-stated": Readonly<Record<never, never>>;
  readonly "drop-height-off": { readonly fallenMetres: number; readonly statedMetres: number };
  readonly "leading-leg-contradicted": {
    readonly stated: Side;
    readonly earlierSeconds: number;
    readonly uncertaintySeconds: number;
  };
  /** Of the hops found, so many have a contact below the limit. */
  readonly "hops-few": {
    readonly found: number;
    readonly used: number;
    readonly wanted: number;
    readonly contactLimitSeconds: number;
  };
  readonly "plate-noisy/empty": { readonly deviationNewtons: number };
  readonly "other-foot-touching/trial": {
    readonly mostNewtons: number;
    readonly seconds: number;
    readonly during: "landing" | "before take-off";
  };
  readonly "leg-swing": { readonly dips: number };
  readonly spikes: { readonly samples: number };
  readonly "dip-in-squat-jump": { readonly dipFraction: number; readonly sunkMetres: number };
  readonly "velocity-from-flight": { readonly course: "from standing" | "from a drop" };
}
