import type { TrialResult } from "../../core/result/trial-result.ts";
import type { PlainEvent, PlainMeasure, PlainResult } from "./plain-values.ts";

/** What differs between the program and the oracle, one line each; empty where they agree. */
export function differences(program: TrialResult, oracle: PlainResult, tolerances: OracleTolerances): string[] {
  return [...eventDifferences(program, oracle.events, tolerances), ...measureDifferences(program, oracle, tolerances)];
}

/** How near the two have to be. */
export interface OracleTolerances {
  /** Of values, relative. */
  readonly relative: number;
  /** Of times and of durations, absolute. */
  readonly seconds: number;
}

/** The only value that is a small difference of large ones (two drop heights in metres): there an absolute floor. */
const cancelling = "dropHeightDifference";
const cancellingFloorMetres = 1e-9;

function eventDifferences(
  program: TrialResult,
  events: readonly PlainEvent[],
  { seconds }: OracleTolerances,
): string[] {
  const key = (event: { name: string; side?: string | undefined; contactIndex?: number | undefined }): string =>
    [event.name, event.contactIndex ?? "", event.side ?? ""].join(" ");
  const ours = new Map(program.events.map((event) => [key(event), event.time]));
  const theirs = new Map(events.map((event) => [key(event), event.time]));
  return pairs(ours, theirs, (a, b) => Math.abs(a - b) <= seconds);
}

function measureDifferences(
  program: TrialResult,
  { measures }: PlainResult,
  { relative, seconds }: OracleTolerances,
): string[] {
  const key = (measure: Pick<PlainMeasure, "id"> & { readonly side?: string }): string =>
    `${measure.id} (${measure.side})`;
  const ours = new Map(program.measures.map((measure) => [key(measure), measure.value]));
  const theirs = new Map(measures.map((measure) => [key(measure), measure.value]));
  const durations = new Set(program.measures.filter((measure) => measure.unit === "s").map(key));
  return pairs(ours, theirs, (a, b, name) => {
    if (name.startsWith(cancelling)) return Math.abs(a - b) <= cancellingFloorMetres;
    return Math.abs(a - b) <= (durations.has(name) ? seconds : relative * Math.abs(b));
  });
}

function pairs(
  ours: ReadonlyMap<string, number>,
  theirs: ReadonlyMap<string, number>,
  agree: (ours: number, theirs: number, name: string) => boolean,
): string[] {
  const lines: string[] = [];
  for (const name of new Set([...ours.keys(), ...theirs.keys()])) {
    const a = ours.get(name);
    const b = theirs.get(name);
    if (a === undefined) lines.push(`${name}: only the oracle has it, ${b}`);
    else if (b === undefined) lines.push(`${name}: only the program has it, ${a}`);
    else if (!agree(a, b, name)) lines.push(`${name}: program ${a}, oracle ${b}, difference ${a - b}`);
  }
  return lines;
}

/** Both compute in double precision what is exact on paper. */
export const exactly: OracleTolerances = { relative: 1e-9, seconds: 1e-9 };

/**
 * With noise the edge of quiet standing is a matter of samples, METHODS leaves its rule open, and a weighing that
 * touches the edge is another one: up to a thousandth of body weight's effect, and what follows from it.
 */
export const nearly: OracleTolerances = { relative: 5e-3, seconds: 5e-4 };
