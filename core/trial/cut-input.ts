import type { Settings } from "../settings/settings.ts";
import type { LoadSegments } from "./segment-load.ts";

/** What the cutting reads. */

export interface CutInput {
  /** Total force with plate zeros removed, newtons. */
  readonly total: Float64Array;
  readonly rateHz: number;
  readonly segments: LoadSegments;
  readonly settings: Settings;
}
