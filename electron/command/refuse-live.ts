import type { SessionResult } from "../../core/result/session-result.ts";
import type { StatedOptions } from "../../core/stated/stated-options.ts";
import { writtenTime } from "../cautions/add-cautions.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Of a live session nobody can state that its cautions are not known: they can still be asked.
 * @throws UsageError naming the sessions of today, or of a day to come
 */
export function refuseLive(
  results: readonly Pick<SessionResult, "folder" | "description">[],
  { cautionsNotKnownBy }: StatedOptions,
  now = new Date(),
): void {
  if (cautionsNotKnownBy === undefined) return;
  const today = writtenTime(now).slice(0, 10);
  const live = results.filter(({ description: { date } }) => date !== undefined && date >= today);
  if (live.length === 0) return;
  const named = live
    .map(({ folder, description }) => `${folder === "" ? "." : folder} (${description.date})`)
    .join(", ");
  throw new UsageError(
    `--cautions not-known is for sessions that are over, and this one is not: ${named}. Ask the cautions and write the answers into its session.json.`,
  );
}
