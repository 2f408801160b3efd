import type { Limb } from "../limb.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import { meanAndDeviation } from "./force-signal.ts";

/** Which plates carried the push of a jump. */
export interface LoadedPlates {
  /** The plate that alone carried it; absent where several did. */
  readonly only?: Plate;
  /** The limb that follows from the plates: theirs where one carried, both where two did; unknown on one plate. */
  readonly limb?: Limb;
}

/** The push is looked at over this time before the plates empty. */
const pushSeconds = 0.3;

/** Reads from two plates which of them carried a push; one plate tells nothing. */
export function loadedPlates(
  plates: readonly Plate[],
  forces: readonly Float64Array[],
  cut: JumpCut,
  rateHz: number,
  settings: Settings,
): LoadedPlates {
  if (plates.length < 2) return {};
  const from = Math.max(0, cut.flight.start - Math.round(pushSeconds * rateHz));
  const loads = forces.map((force) => meanAndDeviation(force, from, cut.flight.start).mean);
  const total = loads.reduce((sum, load) => sum + load, 0);
  // A foot that only touches carries a small part; two legs share the load.
  const carrying = plates.filter(
    (_, index) => loads[index]! > Math.max(settings.otherFootNewtons, settings.otherFootFraction * total),
  );
  const [only] = carrying;
  if (carrying.length === 1 && only !== undefined) {
    return only.limb === "both" ? { only } : { only, limb: only.limb };
  }
  return { limb: "both" };
}
