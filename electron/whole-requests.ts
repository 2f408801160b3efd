import { ChangeConflict } from "./field-conflict.ts";
import type { HostApi, HostRequestName, Workspace } from "./host-api.ts";
import type { HostHandlers } from "./host-handlers.ts";
import type { WorkspaceState } from "./workspace.ts";

/** Requests that change what is stated or kept, within one turn: all of each is done, or nothing. */
const wholeRequests = [
  "workspace.undo",
  "workspace.redo",
  "recordings.answer",
  "recordings.assign",
  "session.change",
  "cautions.add",
  "trials.change",
  "trials.statePlates",
  "records.save",
  "records.bin",
  "records.takeOut",
  "sessions.start",
  "sessions.note",
  "sessions.keep",
] as const satisfies readonly HostRequestName[];

/**
 * The handlers with those requests done whole: where anything throws, even after the change while the reply is made,
 * memory and register are as they were, and the reply "nothing was changed" is true. A conflict of fields is answered
 * with the workspace as it is and the fields in question.
 */
export function doneWhole(handlers: HostHandlers, workspace: WorkspaceState): HostHandlers {
  const whole = Object.fromEntries(wholeRequests.map((name) => [name, asWhole(handlers, workspace, name)]));
  return { ...handlers, ...whole };
}

function asWhole<Name extends (typeof wholeRequests)[number]>(
  handlers: HostHandlers,
  workspace: WorkspaceState,
  name: Name,
) {
  const handle = handlers[name] as (request: HostApi[Name]["request"]) => Workspace;
  return (request: HostApi[Name]["request"]): Workspace => {
    try {
      return workspace.whole(() => handle(request));
    } catch (error) {
      if (!(error instanceof ChangeConflict)) throw error;
      return { ...workspace.read(), conflict: error.fields };
    }
  };
}
