import type { SessionResult } from "../result/session-result.ts";
import { landingsLine, missingLines, progressLine, tooEarlyLines } from "./progress-words.ts";
import { protocolProgress } from "./protocol-progress.ts";
import { withStricterLandings } from "./stricter-landings.ts";

/** A session against its protocol, in words. */
export interface SessionProgress {
  readonly protocol: string;
  /** How far each test has come, one line a test. */
  readonly lines: readonly string[];
  /** What is still missing, one sentence each; empty when the protocol is done. */
  readonly missing: readonly string[];
  /** Said when nothing is missing; empty otherwise. */
  readonly done: string;
  /** What was recorded and should not have been at this stage. */
  readonly tooEarly: readonly string[];
  /** The landings made of those the protocol allows in a day; empty where it sets no limit. */
  readonly landings: string;
}

const noTest = "The protocol has no jump test at this stage.";

/** @returns undefined when the session has no protocol */
export function sessionProgress(session: SessionResult): SessionProgress | undefined {
  const { protocol: stated, involved } = session.description;
  if (stated === undefined) return undefined;
  const protocol = withStricterLandings(stated, session.gate.limits);
  const progress = protocolProgress(protocol, session);
  const isUncompared = involved === undefined && progress.tests.length > 0 && progress.finished && session.gate.open;
  const missing = [
    ...missingLines(progress, session.gate),
    ...(isUncompared ? ["The involved side is not stated, so the sides are not compared."] : []),
  ];
  return {
    protocol: protocol.name,
    lines: progress.tests.map(progressLine),
    missing,
    done: missing.length > 0 ? "" : protocol.tests.length === 0 ? noTest : "Every test of the protocol is done.",
    tooEarly: tooEarlyLines(progress),
    landings: landingsLine(protocol, session.trials, involved),
  };
}
