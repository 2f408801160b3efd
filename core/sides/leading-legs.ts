import type { Side } from "../ground/limb.ts";
import { countOf } from "../ground/plain-words.ts";
import type { LeadTrials, TrialsOfBothSides } from "./side-trials.ts";

/**
 * Why two-leg trials from a box give no index; empty where they do. Stepping off lands the leading leg first and
 * harder, which shifts the index towards it, so both leads are needed and averaged (METHODS §6).
 */
export function leadsObstacle(leads: readonly (Side | undefined)[]): string {
  const stated = leads.filter((lead) => lead !== undefined);
  if (stated.length === 0) {
    return "Not comparable: which leg led off the box is not stated, and the leading leg lands first and shifts the index.";
  }
  const only = (["left", "right"] as const).find((side) => stated.every((lead) => lead === side));
  if (only === undefined) return "";
  const other = only === "left" ? "right" : "left";
  const unstated = leads.length === stated.length ? "" : " that state it";
  const trials = stated.length === 1 ? "the only trial" : `all ${countOf(stated.length, "trial")}`;
  return `Not comparable: in ${trials}${unstated} the ${only} leg led off the box, which shifts the index; trials with the ${other} leg leading are missing.`;
}

/** The trials whose leading leg is stated, still in step; the others belong to neither average. */
export function withStatedLead(trials: TrialsOfBothSides): LeadTrials {
  const at = trials.leads.flatMap((lead, index) => (lead === undefined ? [] : [{ lead, index }]));
  const pick = <Entry>(entries: readonly Entry[]) => at.map(({ index }) => entries[index]!);
  const side = ({ side: name, measures, perBodyMass }: TrialsOfBothSides["first"]) => ({
    side: name,
    measures: pick(measures),
    perBodyMass: pick(perBodyMass),
  });
  return {
    ...trials,
    first: side(trials.first),
    second: side(trials.second),
    used: pick(trials.used),
    leads: at.map(({ lead }) => lead),
  };
}

/** Positions of the trials one leg led in. */
export function positionsOfLead(leads: readonly Side[], side: Side): readonly number[] {
  return leads.flatMap((lead, at) => (lead === side ? [at] : []));
}
