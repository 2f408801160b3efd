import type { HostRequestName } from "./host-api.ts";
import { registerRequestNames } from "./register-request-names.ts";

/** Every request of the boundary; the preload exposes these and no other channel. */
export const requestNames = [
  "application.describe",
  "workspace.read",
  "workspace.openDemo",
  "workspace.clear",
  "workspace.show",
  "workspace.undo",
  "workspace.redo",
  "recordings.add",
  "recordings.endBatch",
  "recordings.takeOut",
  "recordings.lines",
  "recordings.outline",
  "recordings.assign",
  "layouts.remember",
  "layouts.rename",
  "layouts.remove",
  "layouts.import",
  "layouts.export",
  "watch.choose",
  "watch.start",
  "watch.stop",
  "watch.read",
  "watch.expect",
  "recordings.answer",
  "session.change",
  "cautions.add",
  "trials.change",
  "trials.keepOrExclude",
  "trials.statePlates",
  "trials.trace",
  "sides.curves",
  "sheet.read",
  "files.make",
  ...registerRequestNames,
] as const satisfies readonly HostRequestName[];

/** Compiles only while the list above is complete. */
type Missing = Exclude<HostRequestName, (typeof requestNames)[number]>;
const complete: Missing extends never ? true : never = true;

/** True for a name of the boundary; false for anything else, `constructor` and the like included. */
export function isRequestName(name: string): name is HostRequestName {
  return complete && (requestNames as readonly string[]).includes(name);
}

/** The message channel of one request between a window and the host. */
export function channelOf(name: HostRequestName): string {
  return `counterpoise:${name}`;
}
