import { type Finding, proseFinding } from "../../ground/finding.ts";
import { countOf } from "../../ground/plain-words.ts";

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
  const place = (sample: number): string => `${(sample / rateHz).toFixed(3)} s`;
  if (end - start < 2) {
    return { start, end, findings: [refusal("The file holds fewer than two samples that are numbers.", place(0))] };
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
        refusal(
          `Inside the recording ${countOf(inside, "sample")} hold no number, the first at ${place(first)}.`,
          place(first),
        ),
      ],
    };
  }
  const dropped = start + count - end;
  if (dropped === 0) return { start, end, findings: [] };
  const warning = proseFinding(
    "cells-unreadable",
    "warning",
    `${countOf(dropped, "sample")} at the ends without numbers ${dropped === 1 ? "was" : "were"} left out.`,
    "Export the recording again if the missing part matters.",
    { where: place(start > 0 ? 0 : end) },
  );
  return { start, end, findings: [warning] };
}

function refusal(message: string, where: string): Finding {
  return proseFinding(
    "cells-unreadable",
    "refusal",
    message,
    "Export the recording again; no value is put in the place of a missing one.",
    { where },
  );
}
