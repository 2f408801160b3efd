import type { Limb } from "../ground/limb.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import { meanAndDeviation } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";

/** Which plates carried the push of a jump. */
export interface LoadedPlates {
  /** The plate that alone carried it; absent where several did. */
  readonly only?: Plate;
  /** The limb that follows from the plates: theirs where one carried, both where two did; unknown on one plate. */
  readonly limb?: Limb;
}

/** Reads from two plates which of them carried a push, or a drop landing; one plate tells nothing. */
export function loadedPlates(
  plates: readonly Plate[],
  forces: readonly Float64Array[],
  cut: JumpCut,
  rateHz: number,
  settings: Settings,
): LoadedPlates {
  if (plates.length < 2) return {};
  const push = pushSpan(cut, Math.round(settings.loadedPushSeconds * rateHz));
  const loads = forces.map((force) => meanAndDeviation(force, push.start, push.end).mean);
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

function pushSpan({ kind, flight, landing }: JumpCut, samples: number): SampleSpan {
  return kind === "landing"
    ? { start: landing.start, end: Math.min(landing.end, landing.start + samples) }
    : { start: Math.max(0, flight.start - samples), end: flight.start };
}
