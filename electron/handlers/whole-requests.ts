import type { HostApi, HostRequestName } from "../boundary/host-api.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { ChangeConflict } from "../refusals/field-conflict.ts";
import type { RegisterHome } from "../register-host/register-home.ts";
import type { WorkspaceState } from "../workspace/workspace.ts";

/** Requests that take files in or change what is stated or kept, within one turn: all of each is done, or nothing. */
export const wholeRequests = [
  "workspace.clear",
  "workspace.show",
  "workspace.undo",
  "workspace.redo",
  "recordings.add",
  "recordings.endBatch",
  "recordings.takeOut",
  "recordings.answer",
  "recordings.assign",
  "session.change",
  "cautions.add",
  "trials.change",
  "trials.statePlates",
  "records.save",
  "records.bin",
  "records.takeOut",
  "sessions.open",
  "sessions.start",
  "sessions.note",
  "sessions.keep",
  "copies.forget",
] as const satisfies readonly HostRequestName[];

/** They wait for the reading of a file, and do what comes after it as a whole by themselves. */
export const wholeAfterReading = ["archive.import"] as const satisfies readonly HostRequestName[];

/** Requests that only tell what there is. */
const tellingRequests = [
  "application.describe",
  "workspace.read",
  "recordings.lines",
  "recordings.outline",
  "layouts.export",
  "watch.choose",
  "watch.read",
  "trials.trace",
  "sides.curves",
  "sheet.read",
  "register.attend",
  "passphrase.weigh",
  "register.verify",
  "athletes.list",
  "records.previewErasure",
  "bin.read",
  "copies.read",
  "backups.preview",
] as const satisfies readonly HostRequestName[];

/** True for a request that only tells what there is. */
export function onlyTells(name: HostRequestName): boolean {
  return (tellingRequests as readonly HostRequestName[]).includes(name);
}

const changeNothing: ReadonlySet<HostRequestName> = new Set([
  ...wholeRequests,
  ...wholeAfterReading,
  ...tellingRequests,
]);

/** What a person is told where a mistake of ours ended a request. */
export function brokenSentence(name: HostRequestName): string {
  return changeNothing.has(name)
    ? "Something went wrong inside the program; nothing was changed."
    : "Something went wrong inside the program. Part of it may have been done: look at what is shown before you go on.";
}

/**
 * The handlers with those requests done whole: where anything throws, even after the change while the reply is made,
 * memory and register are as they were, and the reply "nothing was changed" is true. A conflict of fields is answered
 * with the workspace as it is and the fields in question.
 */
export function doneWhole(handlers: HostHandlers, workspace: WorkspaceState): HostHandlers {
  const whole = Object.fromEntries(wholeRequests.map((name) => [name, asWhole(handlers, workspace, name)]));
  return { ...handlers, ...whole };
}

/**
 * The same handlers, where a request that changes something is a sign that a person is there. What screens ask again and
 * again by themselves is none.
 */
export function attended(handlers: HostHandlers, home: Pick<RegisterHome, "attend">): HostHandlers {
  const signs = wholeRequests.map((name) => {
    const handle = handlers[name] as unknown as (request: unknown) => unknown;
    const handleSign = (request: unknown) => {
      home.attend();
      return handle(request);
    };
    return [name, handleSign];
  });
  return { ...handlers, ...Object.fromEntries(signs) };
}

function asWhole<Name extends (typeof wholeRequests)[number]>(
  handlers: HostHandlers,
  workspace: WorkspaceState,
  name: Name,
) {
  type Reply = HostApi[Name]["reply"];
  // None of them waits for anything: what is begun within the whole ends within it.
  const handle = handlers[name] as unknown as (request: HostApi[Name]["request"]) => Reply;
  return (request: HostApi[Name]["request"]): Reply | Workspace => {
    try {
      return workspace.whole(() => handle(request));
    } catch (error) {
      if (!(error instanceof ChangeConflict)) throw error;
      return { ...workspace.read(), conflict: error.fields };
    }
  };
}
