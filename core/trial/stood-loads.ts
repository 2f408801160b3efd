import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "./force-signal.ts";
import { passingLoad } from "./passing-load.ts";
import type { SampleSpan } from "./sample-span.ts";
import type { LoadSegments } from "./segment-load.ts";
import { type SteadyLoad, steadyLoads } from "./steady-loads.ts";

/** Loads of at least an athlete's that somebody stands at within a stretch, whatever the recording's steadiest is. */
export function stoodLoads(
  signal: ForceSignal,
  { empty }: Pick<LoadSegments, "empty">,
  within: SampleSpan,
  settings: Settings,
): readonly SteadyLoad[] {
  const least = settings.bodyMassMinimumKg * settings.gravity;
  const around = { signal, empty, emptyLevel: 0 };
  return steadyLoads(signal, within, settings).filter(
    (each) => each.newtons > least && !passingLoad(around, each, settings),
  );
}
