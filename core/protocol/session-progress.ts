import type { SessionResult } from "../result.ts";
import { missingLines, progressLine, tooEarlyLines } from "./progress-words.ts";
import { protocolProgress } from "./protocol-progress.ts";

/** A session against its protocol, in words. */
export interface SessionProgress {
  readonly protocol: string;
  /** How far each test has come, one line a test. */
  readonly lines: readonly string[];
  /** What is still missing, one sentence each; empty when the protocol is done. */
  readonly missing: readonly string[];
  /** What was recorded and should not have been at this stage. */
  readonly tooEarly: readonly string[];
}

/** @returns undefined when the session has no protocol */
export function sessionProgress({ description, trials, gate }: SessionResult): SessionProgress | undefined {
  const { protocol, involved } = description;
  if (protocol === undefined) return undefined;
  const progress = protocolProgress(protocol, trials, involved);
  return {
    protocol: protocol.name,
    lines: progress.tests.map(progressLine),
    missing: missingLines(progress, gate),
    tooEarly: tooEarlyLines(progress),
  };
}
