import { capitalised, countOf } from "../plain-words.ts";
import type { SessionResult, TrialResult } from "../result.ts";
import { noMoreToday, onLimb, protocolTestName } from "./progress-words.ts";
import type { Protocol, ProtocolTest } from "./protocol.ts";
import { belongsTo, type LimbProgress, protocolProgress } from "./protocol-progress.ts";
import { trialVerdict } from "./trial-verdict.ts";

/**
 * What to do after a trial: repeat it, go on with more of the same, or leave it, within the protocol's most attempts
 * and with the gate open. Empty for a trial of which test or limb is unknown.
 */
export function afterTrial(protocol: Protocol, trial: TrialResult, session: SessionResult): string {
  const { trials, description, gate } = session;
  if (!gate.open) return noMoreToday(gate);
  if (trial.test === undefined || trial.limb === undefined) return "";
  const entry = protocol.tests.find((each) => belongsTo(trial, each, protocol));
  if (entry === undefined) return "This test is not in the protocol.";
  const of = protocolProgress(protocol, trials, description.involved).tests.find((each) => each.entry === entry);
  const limb = of?.limbs.find((each) => each.limb === trial.limb);
  return limb === undefined ? "This limb is not in the protocol." : limbSentence(entry, limb, trial);
}

function limbSentence(entry: ProtocolTest, limb: LimbProgress, trial: TrialResult): string {
  const { valid, wanted, attempts, mostAttempts, more } = limb;
  const so = `${valid} of ${wanted}`;
  switch (limb.state) {
    case "complete":
      return `${capitalised(protocolTestName(entry))}${onLimb(limb)} is complete: ${so}.`;
    case "no-more":
      return `Do not repeat it: ${so}, and all ${attempts} attempts are made.`;
    case "repeat": {
      const left = `${so}, ${countOf(mostAttempts - attempts, "attempt")} left`;
      return trialVerdict(trial).counts ? `${more} more of the same: ${left}.` : `Repeat it: ${left}.`;
    }
  }
}
