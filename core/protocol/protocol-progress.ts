import type { Limb } from "../limb.ts";
import type { TrialResult } from "../result.ts";
import { sameBoxHeight } from "../sides/box-height.ts";
import { legsInOrder, type Protocol, type ProtocolExclusion, type ProtocolTest } from "./protocol.ts";
import { trialVerdict } from "./trial-verdict.ts";

/** How far one leg, or both together, has come in one test of the protocol. */
export interface LimbProgress {
  readonly limb: Limb;
  /** Trials that count. */
  readonly valid: number;
  readonly wanted: number;
  /** Every trial made, valid or not. */
  readonly attempts: number;
  readonly mostAttempts: number;
  /** `complete`: enough valid trials; `repeat`: more are wanted and allowed; `no-more`: wanted, but the most attempts are made. */
  readonly state: "complete" | "repeat" | "no-more";
  /** Valid trials still to make, within the attempts left. */
  readonly more: number;
}

/** One test of the protocol with its progress. */
export interface TestProgress {
  readonly entry: ProtocolTest;
  readonly limbs: readonly LimbProgress[];
}

/** A session held against its protocol. */
export interface ProtocolProgress {
  readonly tests: readonly TestProgress[];
  /** Trials of tests that the protocol names as not done yet. */
  readonly tooEarly: readonly { readonly exclusion: ProtocolExclusion; readonly trials: number }[];
  /** Trials that belong to no test of the protocol: another test, another box, or unknown. */
  readonly others: number;
  /** Every test is complete or has used its attempts. */
  readonly finished: boolean;
}

/**
 * Holds the trials of a session against its protocol.
 * @param involved the uninvolved leg is named first
 */
export function protocolProgress(
  protocol: Protocol,
  trials: readonly TrialResult[],
  involved: Parameters<typeof legsInOrder>[0],
): ProtocolProgress {
  const tests = protocol.tests.map((entry): TestProgress => {
    const limbs: readonly Limb[] = entry.legs === "both" ? ["both"] : legsInOrder(involved);
    return { entry, limbs: limbs.map((limb) => limbProgress(protocol, entry, limb, trials)) };
  });
  const planned = trials.filter((trial) => protocol.tests.some((entry) => belongsTo(trial, entry, protocol)));
  const tooEarly = protocol.notYet
    .map((exclusion) => ({ exclusion, trials: trials.filter((trial) => isOf(trial, exclusion)).length }))
    .filter((each) => each.trials > 0);
  const early = tooEarly.reduce((sum, each) => sum + each.trials, 0);
  return {
    tests,
    tooEarly,
    others: trials.length - planned.length - early,
    finished: tests.every(({ limbs }) => limbs.every(({ state }) => state !== "repeat")),
  };
}

function limbProgress(
  protocol: Protocol,
  entry: ProtocolTest,
  limb: Limb,
  trials: readonly TrialResult[],
): LimbProgress {
  const made = trials.filter((trial) => belongsTo(trial, entry, protocol) && trial.limb === limb);
  const valid = made.filter((trial) => trialVerdict(trial).counts).length;
  const { trials: wanted, mostAttempts } = entry;
  const more = Math.max(0, Math.min(wanted - valid, mostAttempts - made.length));
  const state = valid >= wanted ? "complete" : more > 0 ? "repeat" : "no-more";
  return { limb, valid, wanted, attempts: made.length, mostAttempts, state, more };
}

/**
 * A trial from a box belongs to the test from that box. Where nobody stated the box it belongs to the only test of its
 * kind, and to none where the protocol has it from several boxes.
 */
export function belongsTo(trial: TrialResult, entry: ProtocolTest, protocol: Protocol): boolean {
  if (!isOf(trial, entry)) return false;
  if (entry.dropHeightMetres === undefined) return true;
  if (trial.dropHeightMetres !== undefined) return sameBoxHeight(trial.dropHeightMetres, entry.dropHeightMetres);
  return protocol.tests.filter((each) => isOf(trial, each)).length === 1;
}

function isOf(trial: TrialResult, { test, legs }: Pick<ProtocolTest, "test" | "legs">): boolean {
  return trial.test === test && trial.limb !== undefined && (trial.limb === "both") === (legs === "both");
}
