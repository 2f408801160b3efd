import type { Finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import { listInWords } from "../ground/plain-words.ts";
import type { Settings } from "../settings/settings.ts";
import type { GateOpening } from "../stated/cautions-schema.ts";
import type { SessionDescription } from "../stated/session.ts";
import { type AnsweredCautions, answeredCautions } from "./answered-cautions.ts";
import type { Closure } from "./closure.ts";
import { closuresOf, type GatedTrial } from "./closures.ts";
import { isOnDay, type KneeDay, kneeDay } from "./knee-day.ts";
import { type LimitsInForce, limitsInForce } from "./limits.ts";
import { type LoadingTest, testLoad, testLoads } from "./test-load.ts";

/** A closure that the named clinician opened, with who and why. */
export interface OpenedClosure {
  readonly closure: Closure;
  readonly opening: GateOpening;
}

/** Whether statuses of jump criteria may be given today, with the reasons in words. */
export interface Gate {
  /** False while every jump test is closed. */
  readonly open: boolean;
  /** Whole sentences: why all tests are closed, or else what lies within the limits and what closes some tests. */
  readonly reason: string;
  /** What closes all tests or some. */
  readonly closures: readonly Closure[];
  readonly opened: readonly OpenedClosure[];
  readonly day: KneeDay;
  readonly answered: AnsweredCautions;
  readonly limits: LimitsInForce;
}

/** Entries that decide the gate, with the spellings a person may have meant them by. */
const gateEntries: readonly (readonly [spellings: RegExp, words: string])[] = [
  [/pain/i, "pain"],
  [/eff?us|swell/i, "effusion"],
  [/^reading/i, "readings of pain and effusion"],
  [/^caution/i, "the cautions"],
  [/^stop/i, "a stop"],
  [/^limit/i, "the clinic's limits"],
  [/^operat/i, "the operation"],
];

/** Entries of the session's description that would decide the gate but could not be read; empty where there is none. */
function unreadEntries(findings: readonly Finding[]): string {
  const unread = findings.filter((each) => each.code === "session-unreadable").map(({ place }) => place);
  if (unread.some(({ at }) => at === "whole document")) return "the cautions, pain, effusion and a stop";
  const entries = unread.flatMap((place) => (place.at === "name" ? [place.name.split(/[.[]/)[0] ?? ""] : []));
  return listInWords(
    gateEntries.filter(([spellings]) => entries.some((entry) => spellings.test(entry))).map(([, words]) => words),
  );
}

/**
 * The gate of a session's day (PRODUCT, cautions): answers, the worst readings of the day, a stop for the knee or the
 * athlete and the weeks since the operation close tests; measurements are still shown, statuses of closed tests are
 * withheld. What was not asked is not open. What somebody recorded and nobody can read closes, because it might have
 * been the reason to. The named clinician's opening holds until something gets worse.
 *
 * @param findings those made while reading the description
 * @param trials of the session: single-leg and drop tests among them want the second asking
 */
export function gateOf(
  description: SessionDescription,
  settings: Settings,
  findings: readonly Finding[] = [],
  trials: readonly GatedTrial[] = [],
): Gate {
  const day = kneeDay(description);
  const answered = answeredCautions(description, day);
  const limits = limitsInForce(description, settings);
  const unreadable = unreadEntries(findings);
  const found = closuresOf({ description, day, answered, limits, trials, unreadable, settings });
  const openings = (description.gateOpenings ?? []).filter(({ meant }) => isOnDay(meant, description.date));
  const opened = found.flatMap((closure): readonly OpenedClosure[] => {
    const opening = openings.findLast((each) => opens(each, closure));
    return opening === undefined ? [] : [{ closure, opening }];
  });
  const closures = found.filter((closure) => opened.every((each) => each.closure !== closure));
  const closedForAll = closures.filter(closesAll);
  const open = closedForAll.length === 0;
  const partly = closures.filter((each) => !closesAll(each));
  const reasons = (open ? [...withinLimits(day), ...partly.map(reasonOf)] : closedForAll.map(reasonOf)).filter(
    (each) => each !== "",
  );
  return { open, reason: reasons.join(" "), closures, opened, day, answered, limits };
}

function reasonOf({ reason }: Closure): string {
  return reason;
}

function closesAll({ loads, limbs }: Closure): boolean {
  return limbs === undefined && testLoads.every((load) => loads.includes(load));
}

/** True where an opening speaks of a closure that is no worse than it was then, with the doctor it may need. */
function opens({ opens: opened, doctor }: GateOpening, { code, level, openedBy }: Closure): boolean {
  if (openedBy === "answer" || (openedBy === "clinician with doctor" && doctor === undefined)) return false;
  return opened.some((each) => each.code === code && each.level >= level);
}

function withinLimits({ knee, effusion }: KneeDay): readonly string[] {
  const within = [
    ...(effusion === undefined ? [] : [`effusion ${effusion}`]),
    ...(knee === undefined ? [] : [`pain ${knee} of 10`]),
  ];
  return within.length === 0 ? [] : [`Read on the day: ${within.join(", ")}.`];
}

/**
 * What closes a test today; empty while it is open.
 * @param limbs whose jumps it needs; absent: `both`, or either leg of a single-leg test
 */
export function closuresFor(
  { closures }: Pick<Gate, "closures">,
  asked: LoadingTest,
  limbs: readonly Limb[] = asked.legs === "both" ? ["both"] : ["left", "right"],
): readonly Closure[] {
  const load = testLoad(asked);
  return closures
    .filter((each) => each.loads.includes(load))
    .filter((each) => each.limbs === undefined || limbs.some((limb) => each.limbs?.includes(limb)));
}

/** The same as why it is closed, in whole sentences; "" while it is open. */
export function closedFor(gate: Pick<Gate, "closures">, asked: LoadingTest, limbs?: readonly Limb[]): string {
  return closuresFor(gate, asked, limbs).map(reasonOf).join(" ");
}
