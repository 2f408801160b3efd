import type { CutInput } from "./cut-input.ts";
import { fallOf, type JumpCut } from "./cut-trials.ts";
import { isFlight } from "./flights.ts";
import type { SampleSpan } from "./sample-span.ts";
import { standingAfter } from "./standing-after.ts";

/**
 * Cuts a recording into drop landings: an empty plate, an impact, and no flight before the plate empties again.
 * Stepping onto the plate has no impact.
 */
export function cutLandings(input: CutInput): readonly JumpCut[] {
  const { total, rateHz, segments, settings } = input;
  const found = segments.empty.flatMap((emptied, position) => {
    const fall =
      emptied.end < total.length && !isFlight(emptied, input) ? fallOf(emptied, rateHz, settings) : undefined;
    const next = segments.empty[position + 1];
    if (fall === undefined || (next !== undefined && isFlight(next, input))) return [];
    const landing = { start: emptied.end, end: next?.start ?? total.length };
    return hasImpact(landing, input) ? [{ fall, landing }] : [];
  });
  return found.map(({ fall, landing }, position) => {
    const next = found[position + 1];
    const inside = segments.quiet.filter((quiet) => quiet.start >= landing.start && quiet.end <= landing.end);
    const quietAfter = standingAfter(inside, rateHz, settings);
    return {
      kind: "landing",
      span: { start: position === 0 ? 0 : fall.start, end: next === undefined ? total.length : landing.end },
      fall,
      contact: landing,
      flight: fall,
      landed: true,
      landing,
      quietBefore: [],
      quietEarlier: [],
      quietAfter: quietAfter ?? { start: total.length, end: total.length },
      laterFlights: [],
      lastLanding: landing,
    };
  });
}

function hasImpact(landing: SampleSpan, { total, rateHz, segments, settings }: CutInput): boolean {
  const load = Math.max(segments.steadyLoad - segments.emptyLevel, settings.bodyMassMinimumKg * settings.gravity);
  const until = Math.min(landing.end, landing.start + Math.round(settings.landingPeakSeconds * rateHz));
  let largest = 0;
  for (let index = landing.start; index < until; index += 1) largest = Math.max(largest, total[index]!);
  return largest >= settings.landingImpactWeights * load;
}
