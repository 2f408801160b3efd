import { type CautionsDue, cautionsDue } from "../gate/cautions-due.ts";
import { type TestLoad, testLoad, trialLoad } from "../gate/test-load.ts";
import type { SessionResult } from "../result/session-result.ts";
import { protocolProgress } from "./protocol-progress.ts";

/**
 * Where the askings of a session stand; that before the first single-leg or drop test is due once such a test was
 * recorded, comes next in the protocol, or is what the tester expects.
 */
export function sessionCautions(session: SessionResult, expected?: TestLoad): readonly CautionsDue[] {
  const { gate, trials } = session;
  const { protocol } = session.description;
  const next =
    protocol === undefined
      ? undefined
      : protocolProgress(protocol, session).tests.find(({ limbs }) => limbs.some(({ state }) => state === "repeat"))
          ?.entry;
  const loads = (protocol?.tests ?? []).map(testLoad);
  return cautionsDue(gate, loads, trials.map(trialLoad), expected ?? (next === undefined ? undefined : testLoad(next)));
}
