import type { TrialEvent } from "../../core/events/event.ts";
import { roundTo } from "../../core/ground/format-number.ts";
import type { Bearer, Side } from "../../core/ground/limb.ts";
import type { HopResult, TrialResult } from "../../core/result/trial-result.ts";
import { settingsCatalogue } from "../../core/settings/settings.ts";
import { words } from "../words/words.ts";
import { movableEvents } from "./event-move.ts";

const prose = words.screens.traceTables;

/** One contact of a bout, or the entry jump in front of them. */
export interface HopRow {
  /** "entry", or the number of the contact. */
  readonly name: string;
  readonly touchdown?: TrialEvent;
  readonly takeoff?: TrialEvent;
  /** Absent where the contact is no hop. */
  readonly hop?: HopResult;
  /** What a difference counts as later: "right", or "plate 2" while nobody knows which foot stood on it. */
  readonly later: string;
  /** That minus the other one, seconds; absent where one of the two is not known. */
  readonly touchdownDifference?: number;
  readonly takeoffDifference?: number;
  /** Whether the means are made from it, and why not. */
  readonly words: string;
}

/** The rows of the table of hops: the entry jump, then every contact in order, hops or not. */
export function hopRows(trial: TrialResult, hops: readonly HopResult[]): readonly HopRow[] {
  const events = movableEvents(trial.events);
  const entry = events.find((event) => event.name === "takeoff" && event.contactIndex === undefined);
  const numbers = [...new Set(events.flatMap((event) => event.contactIndex ?? []))].sort((a, b) => a - b);
  const find = (name: TrialEvent["name"], contactIndex: number) =>
    events.find((event) => event.name === name && event.contactIndex === contactIndex);
  const pair: readonly [Bearer<Side>, Bearer<Side>] =
    trial.feet === undefined ? [{ side: "left" }, { side: "right" }] : [{ plate: 1 }, { plate: 2 }];
  const later = words.limbs.bearer(pair[1]);
  const apart = (key: "touchdownDifference" | "takeoffDifference", contactIndex?: number): Partial<HopRow> => {
    const name = key === "touchdownDifference" ? "touchdown" : "takeoff";
    const [earlier, later] = pair.map(
      (of) =>
        trial.events.find(
          (each) =>
            each.side === of.side &&
            each.plate === of.plate &&
            each.name === name &&
            each.contactIndex === contactIndex,
        )?.time,
    );
    return earlier === undefined || later === undefined ? {} : { [key]: later - earlier };
  };
  return [
    ...(entry === undefined
      ? []
      : [{ name: "entry", later, takeoff: entry, words: prose.entryJump, ...apart("takeoffDifference") }]),
    ...numbers.map((number): HopRow => {
      const touchdown = find("touchdown", number);
      const takeoff = find("takeoff", number);
      const hop = hops.find((each) => each.contactIndex === number);
      return {
        name: String(number),
        later,
        ...(touchdown === undefined ? {} : { touchdown }),
        ...(takeoff === undefined ? {} : { takeoff }),
        ...(hop === undefined ? {} : { hop }),
        ...apart("touchdownDifference", number),
        ...apart("takeoffDifference", number),
        words: useWords(trial, hop, takeoff),
      };
    }),
  ];
}

function useWords({ limb }: TrialResult, hop: HopResult | undefined, takeoff: TrialEvent | undefined): string {
  if (hop === undefined) return takeoff === undefined ? prose.lastContact : prose.bounceFollows;
  if (hop.used) return prose.used;
  const slow = settingsCatalogue.slowContactSeconds.default;
  return limb === "both" && hop.contactTime >= slow
    ? prose.contactNotBelow(slow.toFixed(2))
    : prose.notAmongBest(settingsCatalogue.bestHops.default);
}

/** A difference of two limbs' events in milliseconds, with its sign: "+3.2". */
export function differenceText(seconds: number): string {
  const digits = roundTo(1000 * seconds, 1);
  return seconds > 0 && /[1-9]/.test(digits) ? `+${digits}` : digits;
}
