import { type Finding, finding } from "../ground/finding.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import { meanOf } from "./force-signal.ts";
import { longestOf, type SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";

/**
 * One of two plates whose force is downward throughout while the other's is upward: its sign is turned. Both turned is the
 * sign of the whole file, and read as that; a plate zeroed under a load shows upward force when more comes onto it.
 * @param empty stretches in which nobody is on the plates: downward counts from there
 */
export function turnedPlateFindings(
  plates: readonly Plate[],
  rateHz: number,
  empty: readonly SampleSpan[],
  settings: Settings,
): readonly Finding[] {
  const [first, second] = plates;
  if (first === undefined || second === undefined || plates.length !== 2) return [];
  const unloaded = longestOf(empty);
  const fromLevel = unloaded === undefined ? [] : turnedFrom(first, second, unloaded, rateHz, settings);
  // Where two turned halves make nothing together, all of it looks empty: then only zero can be counted from.
  return fromLevel.length > 0 ? fromLevel : turnedFrom(first, second, undefined, rateHz, settings);
}

function turnedFrom(
  first: Plate,
  second: Plate,
  unloaded: SampleSpan | undefined,
  rateHz: number,
  settings: Settings,
): readonly Finding[] {
  const least = settings.turnedPlateNewtons * (unloaded === undefined ? settings.turnedPlateUnknownZeroFactor : 1);
  const width = Math.max(2, Math.round(settings.turnedPlateSeconds * rateHz));
  const levelOf = ({ force }: Plate): number =>
    unloaded === undefined ? 0 : meanOf(force, unloaded.start, unloaded.end);
  const goesDown = (plate: Plate): boolean => {
    const below = levelOf(plate) - least;
    return plate.force.some((newtons) => newtons < below);
  };
  // Most plates never go there, and need no means.
  if (!goesDown(first) && !goesDown(second)) return [];
  const own = rangeOf(first.force, width, levelOf(first));
  const others = rangeOf(second.force, width, levelOf(second));
  return [
    { plate: first, range: own, other: second, otherUp: others.up },
    { plate: second, range: others, other: first, otherUp: own.up },
  ].flatMap(({ plate, range: { down, up }, other, otherUp }) => {
    if (down <= least || up >= settings.turnedPlateUpwardFraction * down || otherUp <= least) return [];
    return [
      finding(
        "plate-turned",
        "refusal",
        { plate: plate.name, other: other.name, downNewtons: down, otherUpNewtons: otherUp },
        { place: { at: "plates", names: [plate.name] } },
      ),
    ];
  });
}

/** How far force goes below and above its empty level, newtons. */
function rangeOf(force: Float64Array, width: number, level: number): { readonly down: number; readonly up: number } {
  let down = 0;
  let up = 0;
  for (const value of runningMean(force, width)) {
    if (level - value > down) down = level - value;
    if (value - level > up) up = value - level;
  }
  return { down, up };
}
