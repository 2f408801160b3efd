import type { Closure } from "../gate/closure.ts";
import { closuresFor } from "../gate/gate.ts";
import { capitalised, countOf } from "../ground/plain-words.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Protocol, ProtocolTest } from "../stated/protocol-schema.ts";
import { type Counting, countsFor } from "./counting.ts";
import { onLimb, protocolTestName } from "./progress-words.ts";
import { belongsTo, type LimbProgress, protocolProgress } from "./protocol-progress.ts";
import { withStricterLandings } from "./stricter-landings.ts";

/**
 * What to do after a trial: repeat it, go on with more of the same, or leave it, within the protocol's most attempts
 * and with the gate open. It stands on a board that other people read, so it never says what was answered or read.
 * Empty for a trial of which test or limb is unknown.
 */
export function afterTrial(stated: Protocol, trial: TrialResult, session: SessionResult): string {
  const { gate } = session;
  const protocol = withStricterLandings(stated, gate.limits);
  if (!gate.open) return closedInPublic(gate.closures);
  if (trial.test === undefined || trial.limb === undefined) return "";
  const closures = closuresFor(gate, { test: trial.test, legs: trial.limb === "both" ? "both" : "single" }, [
    trial.limb,
  ]);
  if (closures.length > 0) return closedInPublic(closures);
  const entry = protocol.tests.find((each) => belongsTo(trial, each, protocol));
  if (entry === undefined) return "This test is not in the protocol.";
  const of = protocolProgress(protocol, session).tests.find((each) => each.entry === entry);
  const limb = of?.limbs.find((each) => each.limb === trial.limb);
  if (limb === undefined) return "This limb is not in the protocol.";
  return trial.practice === true
    ? afterPractice(entry, limb)
    : afterAttempt(entry, limb, countsFor(trial, session.trials, entry.dropHeightMetres));
}

/** That tests are closed, and not why. */
function closedInPublic(closures: readonly Closure[]): string {
  return closures.every(({ openedBy }) => openedBy === "answer")
    ? "The cautions are to be asked before the next jump. This one is kept."
    : "No more of these jumps today. The session's cautions say why.";
}

function afterPractice({ practice: most }: ProtocolTest, { valid, wanted, practice }: LimbProgress): string {
  const made =
    most === undefined ? countOf(practice, "practice jump") : `${practice} of at most ${most} practice jumps`;
  const enough = most !== undefined && practice >= most ? " No more practice." : "";
  return `${capitalised(made)}; ${valid} of ${wanted} count so far.${enough}`;
}

function afterAttempt(entry: ProtocolTest, limb: LimbProgress, { counts, waitsFor }: Counting): string {
  const { valid, wanted, attempts, mostAttempts, more } = limb;
  const so = `${valid} of ${wanted}`;
  const waits = waitsFor.length > 0 ? "Do not repeat it: it counts once that is answered. " : "";
  switch (limb.state) {
    case "complete":
      return `${capitalised(protocolTestName(entry))}${onLimb(limb)} is complete: ${so}.`;
    case "waits":
      return `${waits}No more of these are needed: ${so}, ${limb.waiting} ${limb.waiting === 1 ? "waits" : "wait"} for an answer.`;
    case "no-more": {
      const why = attempts >= mostAttempts ? `all ${attempts} attempts are made` : "the landings of the day are made";
      return `${waits === "" ? "Do not repeat it: " : waits}${so}, and ${why}.`;
    }
    case "repeat": {
      const left = `${so}, ${countOf(mostAttempts - attempts, "attempt")} left`;
      if (waits !== "") return `${waits}${more} more of the same: ${left}.`;
      return counts ? `${more} more of the same: ${left}.` : `Repeat it: ${left}.`;
    }
  }
}
