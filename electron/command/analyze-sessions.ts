import type { SessionInput } from "../../core/analysis.ts";
import { analyzeSession } from "../../core/analyze.ts";
import type { SessionResult } from "../../core/result.ts";
import type { Settings } from "../../core/settings.ts";
import { type ListedSession, readSession } from "../read-folder.ts";

/** Reads and analyses sessions one after the other, so that only one session's recordings are in memory at a time. */
export function analyzeSessions(
  sessions: readonly ListedSession[],
  said: Pick<SessionInput, "stated" | "layouts">,
  settings: Settings,
): readonly SessionResult[] {
  return sessions.map((session) => analyzeSession({ ...readSession(session), ...said }, settings).result);
}

/** 0 when every trial was analysed, 1 when some were partial or refused. */
export function exitCodeOf(results: readonly SessionResult[]): 0 | 1 {
  return results.every(({ trials }) => trials.every(({ status }) => status === "analysed")) ? 0 : 1;
}
