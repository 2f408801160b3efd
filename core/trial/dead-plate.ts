import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * A plate of a two-leg trial that shows one and the same value while the other carries the athlete. Before the landing
 * that refuses the trial, and so it does where the velocity is counted back from the standing after it, or where the
 * half load that is left keeps the athlete from being weighed.
 */
export function deadPlateFindings(
  { recording, segments, clipped }: PreparedRecording,
  cut: JumpCut,
  weighed: boolean,
  settings: Settings,
): readonly Finding[] {
  const { plates, rateHz } = recording;
  const [first, second] = plates;
  if (first === undefined || second === undefined) return [];
  const loaded = settings.signLoadFraction * segments.steadyLoad;
  return [
    { own: first, other: second },
    { own: second, other: first },
  ].flatMap(({ own, other }) => {
    const dead = deadSpan(own.force, other.force, loaded, settings.deadPlateSeconds * rateHz, cut.span);
    // A plate that stays at its largest value has not died: its range was exceeded, which is said by itself.
    const isClipped = clipped.some(
      ({ plate, span }) =>
        plates[plate] === own && dead !== undefined && span.start < dead.end && span.end > dead.start,
    );
    if (dead === undefined || isClipped) return [];
    const refuses = !weighed || dead.start < cut.flight.start || cut.kind !== "standing";
    const fromSeconds = dead.start / rateHz;
    const toSeconds = dead.end / rateHz;
    const figures = {
      plate: own.name,
      other: other.name,
      newtons: own.force[dead.start]!,
      seconds: (dead.end - dead.start) / rateHz,
    };
    const place = { at: "plate span", plate: own.name, fromSeconds, toSeconds, decimals: 2 } as const;
    return [finding("plate-dead", refuses ? "refusal" : "warning", figures, { place })];
  });
}

/**
 * The first stretch of one value during which the other plate carries the athlete for long enough, and changes while it
 * does: without noise nothing changes in standing. A flight may lie inside it.
 */
function deadSpan(
  own: Float64Array,
  other: Float64Array,
  loaded: number,
  least: number,
  within: SampleSpan,
): SampleSpan | undefined {
  let start = within.start;
  let carried = 0;
  let changes = 0;
  for (let index = within.start + 1; index <= within.end; index += 1) {
    if (index < within.end && own[index] === own[index - 1]) {
      if (other[index]! > loaded) {
        carried += 1;
        if (other[index] !== other[index - 1]) changes += 1;
      }
      continue;
    }
    if (carried >= least && changes > carried / 2) return { start, end: index };
    start = index;
    carried = 0;
    changes = 0;
  }
  return undefined;
}
