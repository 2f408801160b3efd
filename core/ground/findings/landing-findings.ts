import type { Side } from "../limb.ts";

/** The figures of what is found of flights and landings. */
export interface LandingFindings {
  readonly "landing-off-plate/no-landing": { readonly takeoffSeconds: number };
  /** A landing without an end: force beyond the plate's range is missing, or nothing explains it. */
  readonly "event-not-found/clipped-landing": Readonly<Record<never, never>>;
  readonly "event-not-found/landing-end": Readonly<Record<never, never>>;
  readonly "landing-short/cut-short": { readonly seconds: number };
  readonly "no-first-peak": Readonly<Record<never, never>>;
  /** Too short for a time to stabilisation. */
  readonly "landing-short/stabilisation": { readonly seconds: number; readonly neededSeconds: number };
  readonly "landing-restless": Readonly<Record<never, never>>;
  readonly "first-peaks-differ": { readonly earlySeconds: number; readonly lateSeconds: number };
  readonly "landing-other-plate": {
    readonly limb: Side;
    readonly pushPlate: string;
    readonly landingPlate: string;
    readonly seconds: number;
  };
  readonly "bounce-after-landing": { readonly seconds: number };
  /** How long each flight after the first lasts. */
  readonly "several-flights": { readonly flightSeconds: readonly number[] };
}
