import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import { passingLoad } from "./passing-load.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";
import { type SteadyLoad, steadyLoads } from "./steady-loads.ts";

/**
 * Standing that carries another load than the athlete was weighed at. Stepping on and off pass through less, so less
 * counts only between the weighing and the jump and in the first standing after the landing. A body that moves evenly
 * may carry another load for a while too: not for longer than its speed could bear, and a load held in the dip or in the
 * push is no standing at all.
 */
export function loadChanges(
  prepared: PreparedRecording,
  cut: JumpCut,
  weighed: { readonly newtons: number; readonly window: SampleSpan },
  settings: Settings,
): readonly Finding[] {
  const { newtons, window } = weighed;
  const landed = Math.max(cut.flight.end, ...cut.laterFlights.map((each) => each.end));
  const before = steadyLoads(prepared.total, { start: cut.span.start, end: cut.flight.start }, settings);
  const after = steadyLoads(prepared.total, { start: Math.min(landed, cut.span.end), end: cut.span.end }, settings);
  const around = { signal: prepared.total, empty: prepared.segments.empty, emptyLevel: 0 };
  const off = (each: SteadyLoad): number => each.newtons / newtons - 1;
  const changed = [
    ...before.filter((each) => off(each) > 0 || each.span.start >= window.start),
    ...after.filter((each, index) => off(each) > 0 || index === 0),
  ].find((each) => {
    const seconds = (each.span.end - each.span.start) / prepared.recording.rateHz;
    const speed = Math.abs(off(each)) * settings.gravity * seconds;
    const differs = Math.abs(off(each)) > settings.standingDiffersFraction && speed > settings.standingDiffersSpeed;
    const passes = (): boolean => each.span.end <= cut.flight.start && passingLoad(around, each, settings);
    return differs && !passes();
  });
  if (changed === undefined) return [];
  // Between the weighing and the jump the velocity is counted with the wrong weight.
  const refuses = changed.span.start >= window.start && changed.span.start < cut.flight.start;
  const { rateHz } = prepared.recording;
  const inSeconds = ({ start, end }: SampleSpan) => ({ fromSeconds: start / rateHz, toSeconds: end / rateHz });
  const when = inSeconds(changed.span);
  const weighedWhen = inSeconds(window);
  return [
    finding(
      "load-changes",
      refuses ? "refusal" : "warning",
      {
        newtons: changed.newtons,
        ...when,
        weighedNewtons: newtons,
        weighedFromSeconds: weighedWhen.fromSeconds,
        weighedToSeconds: weighedWhen.toSeconds,
      },
      { place: { at: "span", ...when, decimals: 2 } },
    ),
  ];
}
