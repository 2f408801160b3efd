import type { Settings } from "../settings/settings.ts";
import type { CutInput } from "./cut-input.ts";
import { isFlight } from "./flights.ts";
import type { SampleSpan } from "./sample-span.ts";
import { standingAfter } from "./standing-after.ts";

/** One attempt as the coarse segmentation sees it. */
export interface JumpCut {
  /** `standing`: the athlete was on the plate; `drop`: fell onto the empty plate; `landing`: fell and did not jump. */
  readonly kind: "standing" | "drop" | "landing";
  readonly span: SampleSpan;
  /** The last part of the empty plate before a drop's contact. */
  readonly fall?: SampleSpan;
  /** Loaded plate up to the flight; of a landing, from the fall on. */
  readonly contact: SampleSpan;
  /** The flight; its end is the end of the recording when no landing follows. Of a landing: the fall. */
  readonly flight: SampleSpan;
  readonly landed: boolean;
  /** Loaded plate after the flight, up to the next time it empties; empty when not landed. */
  readonly landing: SampleSpan;
  /** Quiet standing before the movement, in order; empty when there is none. */
  readonly quietBefore: readonly SampleSpan[];
  /** Quiet standing earlier in the recording, before the athlete left the plate to drop onto it. */
  readonly quietEarlier: readonly SampleSpan[];
  readonly quietAfter: SampleSpan;
  /** Flights that follow the landing without quiet standing in between. */
  readonly laterFlights: readonly SampleSpan[];
  /** Loaded plate after the last of all flights; empty when the athlete did not come back onto the plate. */
  readonly lastLanding: SampleSpan;
}

/** Cuts a recording into jumps: each a first flight after a push, with what came before and after it. */
export function cutJumps(input: CutInput): readonly JumpCut[] {
  const { segments } = input;
  const flights = segments.empty.filter((span) => isFlight(span, input));
  const groups: SampleSpan[][] = [];
  for (const flight of flights) {
    const previous = groups.at(-1);
    const before = previous?.at(-1);
    const joined = before !== undefined && isOneLoad(before.end, flight.start, input);
    if (previous === undefined || !joined) groups.push([flight]);
    else previous.push(flight);
  }
  const starts = groups.map((group) => startOf(group[0]!, input));
  return groups.map((group, position) =>
    cutOne(group, starts[position]!, groups[position - 1]?.at(-1), starts[position + 1], input),
  );
}

/** True when nobody stood still and nobody left the plate between two samples. */
function isOneLoad(from: number, to: number, input: CutInput): boolean {
  const stood = input.segments.quiet.some((quiet) => quiet.start >= from && quiet.end <= to);
  return !stood && emptiedAfter(from, input) >= to;
}

/** Start of the first empty stretch after a sample that is longer than the ringing of a landing. */
function emptiedAfter(from: number, { total, rateHz, segments, settings }: CutInput): number {
  const least = settings.flightMinimumSeconds * rateHz;
  return segments.empty.find((span) => span.start >= from && span.end - span.start >= least)?.start ?? total.length;
}

interface AttemptStart {
  readonly flight: SampleSpan;
  readonly contact: SampleSpan;
  readonly fall?: SampleSpan;
}

/** The contact before a first flight, and the fall before it where the plate was empty and nobody stood there since. */
function startOf(flight: SampleSpan, { rateHz, segments, settings }: CutInput): AttemptStart {
  const emptied = segments.empty.findLast(
    (span) => span.end <= flight.start && span.end - span.start >= settings.fallMinimumSeconds * rateHz,
  );
  const contact = { start: emptied?.end ?? 0, end: flight.start };
  const fall = emptied === undefined ? undefined : fallOf(emptied, rateHz, settings);
  const short = contact.end - contact.start <= settings.dropContactMaximumSeconds * rateHz;
  const stood = segments.quiet.some((quiet) => quiet.start >= contact.start && quiet.end <= contact.end);
  return { flight, contact, ...(fall !== undefined && short && !stood ? { fall } : {}) };
}

/** The last part of an empty stretch, long enough to fall through; undefined where the plate was hardly empty. */
export function fallOf(emptied: SampleSpan, rateHz: number, settings: Settings): SampleSpan | undefined {
  if (emptied.end - emptied.start < settings.fallMinimumSeconds * rateHz) return undefined;
  const longest = Math.round(settings.flightMaximumSeconds * rateHz);
  return { start: Math.max(emptied.start, emptied.end - longest), end: emptied.end };
}

function cutOne(
  group: readonly SampleSpan[],
  { contact, fall }: AttemptStart,
  previousFlight: SampleSpan | undefined,
  next: AttemptStart | undefined,
  input: CutInput,
): JumpCut {
  const { total, rateHz, segments, settings } = input;
  const first = group[0]!;
  const last = group.at(-1)!;
  const longest = settings.flightMaximumSeconds * rateHz;
  const landsAfter = (span: SampleSpan): boolean => span.end < total.length && span.end - span.start <= longest;
  const landingAfter = (span: SampleSpan): SampleSpan =>
    landsAfter(span)
      ? { start: span.end, end: emptiedAfter(span.end, input) }
      : { start: total.length, end: total.length };
  const landed = landsAfter(first);
  const flight = landed ? first : { start: first.start, end: Math.min(first.end, first.start + Math.round(longest)) };
  const nextStart = next?.fall?.start ?? next?.flight.start ?? total.length;
  const before = (from: number, to: number): readonly SampleSpan[] =>
    segments.quiet.filter((quiet) => quiet.start >= from && quiet.end <= to);
  const earliest = previousFlight?.end ?? 0;
  const quietBefore = before(Math.max(contact.start, earliest), first.start);
  const latest = Math.min(next?.flight.start ?? total.length, emptiedAfter(last.end, input));
  const quietAfter = standingAfter(before(last.end, latest), rateHz, settings);
  return {
    kind: fall === undefined ? "standing" : "drop",
    span: {
      start: previousFlight === undefined ? 0 : (fall?.start ?? quietBefore[0]?.start ?? contact.start),
      end: next === undefined ? total.length : (quietAfter?.end ?? nextStart),
    },
    ...(fall === undefined ? {} : { fall }),
    contact,
    flight,
    landed,
    landing: landingAfter(first),
    quietBefore,
    quietEarlier: fall === undefined ? [] : before(earliest, fall.start),
    quietAfter: quietAfter ?? { start: total.length, end: total.length },
    laterFlights: group.slice(1),
    lastLanding: landingAfter(last),
  };
}
