import { type Finding, finding } from "../../ground/finding.ts";
import type { Place } from "../../ground/place.ts";

/** Samples `[start, end)` in which every used platform holds a number. */
export interface UsableSamples {
  readonly start: number;
  readonly end: number;
  readonly findings: readonly Finding[];
}

/** Leaves out samples that are no numbers at either end and says so; one inside is a refusal, as in a table. */
export function findUsableSamples(forces: readonly Float64Array[], rateHz: number): UsableSamples {
  const count = forces[0]?.length ?? 0;
  const isUsable = (sample: number): boolean => forces.every((force) => Number.isFinite(force[sample]));
  let start = 0;
  while (start < count && !isUsable(start)) start++;
  let end = count;
  while (end > start && !isUsable(end - 1)) end--;
  const place = (sample: number): Place => ({ at: "time", seconds: sample / rateHz, decimals: 3 });
  if (end - start < 2) {
    return { start, end, findings: [finding("cells-unreadable/too-few-samples", "refusal", {}, { place: place(0) })] };
  }
  let inside = 0;
  let first = -1;
  for (let sample = start; sample < end; sample++) {
    if (isUsable(sample)) continue;
    inside++;
    if (first < 0) first = sample;
  }
  if (inside > 0) {
    return {
      start,
      end,
      findings: [
        finding(
          "cells-unreadable/samples-inside",
          "refusal",
          { samples: inside, firstSeconds: first / rateHz },
          { place: place(first) },
        ),
      ],
    };
  }
  const dropped = start + count - end;
  if (dropped === 0) return { start, end, findings: [] };
  const warning = finding(
    "cells-unreadable/samples-at-ends",
    "warning",
    { samples: dropped },
    { place: place(start > 0 ? 0 : end) },
  );
  return { start, end, findings: [warning] };
}
