import { together } from "../cautions/together.ts";
import type { RecordContent } from "./record-schemas.ts";

type SessionContent = RecordContent<"sessions">;

/** What of a session's record is only ever added to. */
const addedTo = ["cautionAnswers", "readings", "gateOpenings"] as const satisfies readonly (keyof SessionContent)[];

/** A session's record that is to take the place of another, with everything that either was given of what is only added to. */
export function withAdded(before: SessionContent, after: SessionContent): SessionContent {
  const lists = addedTo.map((name) => [name, together<unknown>(before[name], after[name])] as const);
  return { ...after, ...Object.fromEntries(lists.filter(([, list]) => list.length > 0)) };
}
