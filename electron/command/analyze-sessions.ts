import { availableParallelism } from "node:os";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { SessionInput } from "../../core/session/session-input.ts";
import type { Settings } from "../../core/settings/settings.ts";
import type { ListedSession } from "../files/read-folder.ts";
import { analyzeListed } from "../jobs/analyze-listed.ts";
import { startCrew } from "../jobs/crew.ts";
import { keptPerSession } from "./keep-option.ts";

/** Fewer files than this are analysed sooner by one thread than others are started. */
const filesWorthSharing = 64;

/**
 * Analyses sessions one after the other, each by as many threads as are wanted.
 * @param jobs how many threads share the work; absent: as many as the machine has, for more than a few files
 */
export async function analyzeSessions(
  sessions: readonly ListedSession[],
  stated: Pick<SessionInput, "stated" | "layouts">,
  settings: Settings,
  jobs?: number,
): Promise<readonly SessionResult[]> {
  const statedOf = keptPerSession(stated.stated, sessions);
  const files = sessions.reduce((sum, { names }) => sum + names.length, 0);
  const crew = startCrew(jobs ?? (files < filesWorthSharing ? 1 : availableParallelism()));
  try {
    const results: SessionResult[] = [];
    for (const session of sessions) {
      results.push(await analyzeListed(session, { ...stated, stated: statedOf(session) }, settings, crew));
    }
    return results;
  } finally {
    await crew.close();
  }
}

/** 0 when every trial was analysed, 1 when some were partial or refused. */
export function exitCodeOf(results: readonly SessionResult[]): 0 | 1 {
  return results.every(({ trials }) => trials.every(({ status }) => status === "analysed")) ? 0 : 1;
}
