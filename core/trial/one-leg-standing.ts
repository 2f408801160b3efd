import type { Settings } from "../settings/settings.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";

/** Somebody standing still on one leg, on one of two plates. */
export interface OneLegStanding {
  /** Name of the plate that carries everything. */
  readonly plate: string;
  readonly span: SampleSpan;
}

/** The longest stretch of quiet standing in which one plate carries everything, if it is long enough. */
function longestOn(loaded: number, { recording, forces, segments }: PreparedRecording, settings: Settings) {
  const { rateHz } = recording;
  const block = Math.max(2, Math.round(settings.quietBlockSeconds * rateHz));
  const others = forces.filter((_, plate) => plate !== loaded).map((force) => runningMean(force, block));
  let longest: SampleSpan | undefined;
  for (const quiet of segments.quiet) {
    let start = quiet.start;
    for (let sample = quiet.start; sample <= quiet.end; sample += 1) {
      const alone = sample < quiet.end && others.every((force) => Math.abs(force[sample]!) < settings.otherFootNewtons);
      if (alone) continue;
      if (sample - start > (longest === undefined ? 0 : longest.end - longest.start)) longest = { start, end: sample };
      start = sample + 1;
    }
  }
  const seconds = longest === undefined ? 0 : (longest.end - longest.start) / rateHz;
  return seconds >= settings.oneLegStandingSeconds ? longest : undefined;
}

/**
 * The plate somebody stands on with one leg, quietly and for `oneLegStandingSeconds`, while the other stays empty.
 * Undefined where nobody does, on one plate, and where both plates are stood on in turn, which leaves open which leg
 * was meant.
 */
export function oneLegStanding(prepared: PreparedRecording, settings: Settings): OneLegStanding | undefined {
  const { plates } = prepared.recording;
  if (plates.length !== 2) return undefined;
  const found = plates.flatMap(({ name }, index) => {
    const span = longestOn(index, prepared, settings);
    return span === undefined ? [] : [{ plate: name, span }];
  });
  return found.length === 1 ? found[0] : undefined;
}
