import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { FieldConflict } from "../../electron/refusals/field-conflict.ts";
import type { SettledField } from "../../electron/refusals/settled-fields.ts";

/** Fields that were changed elsewhere while this screen changed them too. */
export interface Conflict {
  readonly fields: readonly FieldConflict[];
  /** Goes on with what the person chose for each; undefined leaves everything as it is now. */
  readonly choose: (settled: readonly SettledField[] | undefined) => void;
}

/** Requests that state something about a session, by the parts that tell them from others that name a folder. */
const statements = ["answers", "rows", "change", "feet"];

/** A statement about the session shown, with what was said of it when it was made; every other request as it is. */
export function withStart<Request extends object>(request: Request, workspace: Workspace | undefined): Request {
  const said = workspace?.session?.description;
  if (said === undefined || "before" in request) return request;
  const isStatement = statements.some((part) => part in request);
  const isOfShown = "folder" in request && request.folder === workspace?.folder;
  return isStatement && isOfShown ? { ...request, before: said } : request;
}
