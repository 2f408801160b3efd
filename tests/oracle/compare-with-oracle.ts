import type { TrialResult } from "../../core/result.ts";
import type { PlainEvent, PlainMeasure, PlainResult } from "./plain-values.ts";

/** What differs between the program and the oracle, one line each; empty where they agree. */
export function differences(program: TrialResult, oracle: PlainResult, tolerances: OracleTolerances): string[] {
  return [...eventDifferences(program, oracle.events, tolerances), ...measureDifferences(program, oracle, tolerances)];
}

export interface OracleTolerances {
  /** Of values, relative. */
  readonly relative: number;
  /** Of times and of durations, absolute. */
  readonly seconds: number;
  /** Measures that the oracle has no part in. */
  readonly beyondTheOracle?: readonly string[];
}

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
  { relative, seconds, beyondTheOracle = [] }: OracleTolerances,
): string[] {
  const key = (measure: PlainMeasure): string => `${measure.id} (${measure.side})`;
  const kept = program.measures.filter((measure) => !beyondTheOracle.includes(measure.id));
  const ours = new Map(kept.map((measure) => [key(measure), measure.value]));
  const theirs = new Map(measures.map((measure) => [key(measure), measure.value]));
  const durations = new Set(program.measures.filter((measure) => measure.unit === "s").map(key));
  return pairs(
    ours,
    theirs,
    (a, b, name) => Math.abs(a - b) <= (durations.has(name) ? seconds : relative * Math.abs(b)),
  );
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
