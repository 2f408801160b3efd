import type { InvolvedSide, Limb, Side } from "../ground/limb.ts";
import { startsFromBox, testFacts } from "../ground/test-kind.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { boxHeights, sameBoxHeight } from "../sides/box-height.ts";
import type { Comparison } from "../sides/comparison.ts";
import { limbsOf } from "../stated/protocol.ts";
import type { Protocol, ProtocolExclusion, ProtocolTest } from "../stated/protocol-schema.ts";
import { type Counting, countsFor, onTwoPlates } from "./counting.ts";
import { landingsLeft } from "./landings.ts";

/** How far one leg, or both together, has come in one test of the protocol. */
export interface LimbProgress {
  readonly limb: Limb;
  /** Trials that count. Of a two-leg test from a box no more than its leading legs allow. */
  readonly valid: number;
  /** Trials that count as soon as a person has answered what they wait for. */
  readonly waiting: number;
  readonly wanted: number;
  /** Every trial made, valid or not; practice jumps are none. */
  readonly attempts: number;
  readonly mostAttempts: number;
  readonly practice: number;
  /** Trials that count still wanted with each leg leading; absent where no leg leads. */
  readonly leadsWanted?: { readonly left: number; readonly right: number };
  /**
   * `complete`: enough valid trials; `waits`: enough once answers are given; `repeat`: more are wanted and allowed;
   * `no-more`: wanted, but the most attempts or landings are made.
   */
  readonly state: "complete" | "waits" | "repeat" | "no-more";
  /** Valid trials still to make, within the attempts and landings left; none for what an answer would settle. */
  readonly more: number;
}

/** One test of the protocol with its progress. */
export interface TestProgress {
  readonly entry: ProtocolTest;
  readonly limbs: readonly LimbProgress[];
  /** Why its comparison cannot be made although all its trials are there, a whole sentence; empty where it can. */
  readonly obstacle: string;
}

/** A session held against its protocol. */
export interface ProtocolProgress {
  readonly tests: readonly TestProgress[];
  /** Trials of tests that the protocol names as not done yet, practice jumps too. */
  readonly tooEarly: readonly { readonly exclusion: ProtocolExclusion; readonly trials: number }[];
  /** Trials that belong to no test of the protocol: another test, another box, or unknown. */
  readonly others: number;
  /** Every test is complete or has used its attempts, and nothing stands in the way of its comparison. */
  readonly finished: boolean;
}

/** What of a session its progress is made from. */
export type ProgressSession = Pick<SessionResult, "trials" | "comparisons"> & {
  readonly description: { readonly involved?: InvolvedSide };
};

/** Holds the trials of a session against its protocol. */
export function protocolProgress(protocol: Protocol, session: ProgressSession): ProtocolProgress {
  const { trials, comparisons, description } = session;
  const { involved } = description;
  const tests = protocol.tests.map((entry): TestProgress => {
    const box = entry.dropHeightMetres ?? usualBox(entry, protocol, trials);
    const limbs = limbsOf(entry, involved).map((limb) => limbProgress(protocol, entry, limb, box, trials));
    const done = limbs.length > 0 && limbs.every(({ state }) => state === "complete");
    return { entry, limbs, obstacle: done ? obstacleOf(entry, box, comparisons) : "" };
  });
  const isPlanned = (trial: TrialResult) =>
    protocol.tests.some((entry) => belongsTo(trial, entry, protocol) && isDoneBy(trial, entry, involved));
  const unplanned = trials.filter((trial) => !isPlanned(trial));
  const tooEarly = protocol.notYet
    .map((exclusion) => ({ exclusion, trials: unplanned.filter((trial) => isOf(trial, exclusion)).length }))
    .filter((each) => each.trials > 0);
  const early = tooEarly.reduce((sum, each) => sum + each.trials, 0);
  return {
    tests,
    tooEarly,
    others: unplanned.length - early,
    finished: tests.every(
      ({ limbs, obstacle }) =>
        obstacle === "" && limbs.every(({ state }) => state === "complete" || state === "no-more"),
    ),
  };
}

/**
 * How many more trials of a test from a box, on one leg or both, the protocol allows in this session: within its most
 * attempts and its landings of a day. None of a test it does not have.
 */
export function trialsAllowed(
  protocol: Protocol,
  asked: Pick<ProtocolTest, "test" | "legs" | "dropHeightMetres">,
  limb: Limb,
  { trials, description }: Pick<ProgressSession, "trials" | "description">,
): number {
  const entry = protocol.tests.find(
    (each) => each.test === asked.test && each.legs === asked.legs && isFrom(asked.dropHeightMetres, each, protocol),
  );
  if (entry === undefined || !limbsOf(entry, description.involved).includes(limb)) return 0;
  return allowedOf(protocol, entry, limb, trials);
}

function allowedOf(protocol: Protocol, entry: ProtocolTest, limb: Limb, trials: readonly TrialResult[]): number {
  const made = trials.filter((trial) => isAttempt(trial, entry, limb, protocol)).length;
  const landings = landingsLeft(protocol, limb, trials);
  const byLandings = landings === undefined ? Number.POSITIVE_INFINITY : Math.floor(landings / landingsEach(entry));
  return Math.max(0, Math.min(entry.mostAttempts - made, byLandings));
}

/** What one more trial lands at least; of repeated hops nobody knows before. */
function landingsEach({ test }: ProtocolTest): number {
  const { landings } = testFacts(test);
  return landings === "each contact" ? 1 : landings;
}

function isAttempt(trial: TrialResult, entry: ProtocolTest, limb: Limb, protocol: Protocol): boolean {
  return trial.practice !== true && trial.limb === limb && belongsTo(trial, entry, protocol);
}

function limbProgress(
  protocol: Protocol,
  entry: ProtocolTest,
  limb: Limb,
  box: number | undefined,
  trials: readonly TrialResult[],
): LimbProgress {
  const ofLimb = trials.filter((trial) => trial.limb === limb && belongsTo(trial, entry, protocol));
  const made = ofLimb.filter((trial) => trial.practice !== true);
  const counted = made.map((trial) => ({ trial, counting: countsFor(trial, trials, box) }));
  const { trials: wanted, mostAttempts } = entry;
  const leads = limb === "both" && startsFromBox(entry.test) ? leadingLegs(entry, counted) : undefined;
  const valid = leads?.valid ?? counted.filter(({ counting }) => counting.counts).length;
  const waiting = counted.filter(({ counting }) => counting.waitsFor.length > 0).length;
  const missing = Math.max(0, wanted - valid - waiting);
  const more = Math.min(missing, allowedOf(protocol, entry, limb, trials));
  const state = valid >= wanted ? "complete" : missing === 0 ? "waits" : more > 0 ? "repeat" : "no-more";
  return {
    limb,
    valid,
    waiting,
    wanted,
    attempts: made.length,
    mostAttempts,
    practice: ofLimb.length - made.length,
    ...(leads === undefined ? {} : { leadsWanted: leads.wanted }),
    state,
    more,
  };
}

/** The box of most trials, the lower of two alike: boxes are never mixed, also where the protocol names none. */
function usualBox(entry: ProtocolTest, protocol: Protocol, trials: readonly TrialResult[]): number | undefined {
  if (!startsFromBox(entry.test)) return undefined;
  const own = trials.filter((trial) => trial.practice !== true && belongsTo(trial, entry, protocol));
  const from = (box: number | undefined) => own.filter((trial) => sameBoxHeight(trial.dropHeightMetres, box)).length;
  const stated = boxHeights(own).filter((box) => box !== undefined);
  return stated.toSorted((one, other) => from(other) - from(one))[0];
}

/**
 * The leading leg lands first and shifts an index, so trials with either leg leading are averaged (METHODS §6): beyond
 * what is wanted with one leg, a trial counts once the other leg has led as often as is wanted of it. Where the protocol
 * does not say how often, each leg leads once at least. Trials on one plate are in no comparison of sides: no leg of
 * theirs is asked for.
 */
function leadingLegs(
  { perLeadingLeg, trials: wanted }: ProtocolTest,
  counted: readonly { readonly trial: TrialResult; readonly counting: Counting }[],
): { readonly valid: number; readonly wanted: { readonly left: number; readonly right: number } } | undefined {
  const counting = counted.filter((each) => each.counting.counts).map((each) => each.trial);
  const compared = counting.filter(onTwoPlates);
  if (counting.length > 0 && compared.length === 0) return undefined;
  const each = perLeadingLeg ?? (wanted > 1 ? 1 : 0);
  const led = (side: Side) => compared.filter((trial) => trial.leadingLeg === side).length;
  const [left, right] = [led("left"), led("right")];
  const short = { left: Math.max(0, each - left), right: Math.max(0, each - right) };
  const beyond = compared.length - Math.min(each, left) - Math.min(each, right);
  const isShort = short.left + short.right > 0;
  const free = isShort ? Math.min(beyond, Math.max(0, wanted - 2 * each)) : beyond;
  return { valid: compared.length - beyond + free, wanted: short };
}

/** Why the comparisons that a test of the protocol is for have no index although its trials count. */
function obstacleOf(entry: ProtocolTest, box: number | undefined, comparisons: readonly Comparison[]): string {
  const own = comparisons.filter(
    (each) =>
      each.role === "criterion" &&
      each.test === entry.test &&
      each.legs === entry.legs &&
      (box === undefined || sameBoxHeight(each.dropHeightMetres, box)),
  );
  const notComparable = own.find((each) => each.notComparable !== undefined)?.notComparable;
  if (notComparable !== undefined) return notComparable;
  return own.some((each) => each.plates === "unproved" || each.plates === "contradicted")
    ? "In a trial beside those that count it is not proved which foot stood on which plate: left and right have no status until that is answered or the trial is excluded."
    : "";
}

/**
 * A trial from a box belongs to the test from that box. Where nobody stated the box it belongs to the only test of its
 * kind, and to none where the protocol has it from several boxes.
 */
export function belongsTo(trial: TrialResult, entry: ProtocolTest, protocol: Protocol): boolean {
  return isOf(trial, entry) && isFrom(trial.dropHeightMetres, entry, protocol);
}

function isFrom(boxMetres: number | undefined, entry: ProtocolTest, protocol: Protocol): boolean {
  if (entry.dropHeightMetres === undefined) return true;
  if (boxMetres !== undefined) return sameBoxHeight(boxMetres, entry.dropHeightMetres);
  return protocol.tests.filter((each) => each.test === entry.test && each.legs === entry.legs).length === 1;
}

function isDoneBy({ limb }: TrialResult, entry: ProtocolTest, involved: InvolvedSide | undefined): boolean {
  return limb !== undefined && limbsOf(entry, involved).includes(limb);
}

function isOf(trial: TrialResult, { test, legs }: Pick<ProtocolTest, "test" | "legs">): boolean {
  return trial.test === test && trial.limb !== undefined && (trial.limb === "both") === (legs === "both");
}
