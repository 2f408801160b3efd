import type { Settings } from "../settings.ts";
import type { SampleSpan } from "./sample-span.ts";
import type { LoadSegments } from "./segment-load.ts";

/** One standing jump as the coarse segmentation sees it. */
export interface JumpCut {
  readonly span: SampleSpan;
  /** The flight; its end is the end of the recording when no landing follows. */
  readonly flight: SampleSpan;
  readonly landed: boolean;
  /** Quiet standing before the dip, in order; empty when there is none. */
  readonly quietBefore: readonly SampleSpan[];
  readonly quietAfter: SampleSpan;
  /** Flights that follow the landing without quiet standing in between. */
  readonly laterFlights: readonly SampleSpan[];
}

/** A push this far above the standing load must come before a flight; stepping off a plate has none. */
const pushLoads = 1.2;
/** The push is looked for this long before the plate empties. */
const pushSeconds = 0.4;

/** Cuts a recording into standing jumps: quiet standing, dip, push, flight, landing. */
export function cutJumps(
  total: Float64Array,
  rateHz: number,
  segments: LoadSegments,
  settings: Settings,
): readonly JumpCut[] {
  const flights = segments.empty.filter((span) => isFlight(span, total, rateHz, segments, settings));
  const groups: SampleSpan[][] = [];
  for (const flight of flights) {
    const previous = groups.at(-1);
    const before = previous?.at(-1);
    const stoodBetween =
      before === undefined || segments.quiet.some((quiet) => quiet.start >= before.end && quiet.end <= flight.start);
    if (stoodBetween || previous === undefined) groups.push([flight]);
    else previous.push(flight);
  }
  return groups.map((group, position) =>
    cutOne(group, groups[position - 1]?.at(-1), groups[position + 1]?.[0], total, segments, settings, rateHz),
  );
}

function isFlight(
  span: SampleSpan,
  total: Float64Array,
  rateHz: number,
  segments: LoadSegments,
  settings: Settings,
): boolean {
  const seconds = (span.end - span.start) / rateHz;
  if (span.start === 0 || seconds < settings.flightMinimumSeconds) return false;
  const from = Math.max(0, span.start - Math.round(pushSeconds * rateHz));
  let largest = 0;
  for (let index = from; index < span.start; index += 1) largest = Math.max(largest, total[index]!);
  return largest > pushLoads * segments.steadyLoad;
}

function cutOne(
  group: readonly SampleSpan[],
  previousFlight: SampleSpan | undefined,
  nextFlight: SampleSpan | undefined,
  total: Float64Array,
  segments: LoadSegments,
  settings: Settings,
  rateHz: number,
): JumpCut {
  const first = group[0]!;
  const longest = settings.flightMaximumSeconds * rateHz;
  const landed = first.end < total.length && first.end - first.start <= longest;
  const flight = landed ? first : { start: first.start, end: Math.min(first.end, first.start + Math.round(longest)) };
  const earliest = previousFlight?.end ?? 0;
  // Standing counts only since the plate was last stepped on.
  const steppedOn = segments.empty.findLast((span) => span.end <= first.start && span.end > earliest)?.end ?? earliest;
  const quietBefore = segments.quiet.filter((quiet) => quiet.start >= steppedOn && quiet.end <= first.start);
  const last = group.at(-1)!;
  const quietAfter = segments.quiet.find(
    (quiet) => quiet.start >= last.end && quiet.end <= (nextFlight?.start ?? total.length),
  );
  return {
    span: {
      start: previousFlight === undefined ? 0 : (quietBefore[0]?.start ?? steppedOn),
      end: nextFlight === undefined ? total.length : (quietAfter?.end ?? nextFlight.start),
    },
    flight,
    landed,
    quietBefore,
    quietAfter: quietAfter ?? { start: total.length, end: total.length },
    laterFlights: group.slice(1),
  };
}
