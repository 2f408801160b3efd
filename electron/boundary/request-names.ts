import type { HostRequestName } from "./host-api.ts";

/**
 * Every request of the boundary; the preload exposes these and no other channel. Written by `node build/write-schemas.ts`
 * from the map of requests, of which the preload, one small file, takes nothing along.
 */
export const requestNames = [
  "application.describe",
  "workspace.read",
  "workspace.openDemo",
  "workspace.clear",
  "workspace.show",
  "workspace.undo",
  "workspace.redo",
  "session.change",
  "cautions.add",
  "trials.change",
  "trials.keepOrExclude",
  "trials.statePlates",
  "trials.trace",
  "sides.curves",
  "sheet.read",
  "files.make",
  "recordings.add",
  "recordings.endBatch",
  "recordings.takeOut",
  "recordings.lines",
  "recordings.outline",
  "recordings.assign",
  "recordings.answer",
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
  "register.openOwn",
  "register.lock",
  "register.unlock",
  "register.setPassphrase",
  "passphrase.weigh",
  "register.removePassphrase",
  "register.forgetPassphrase",
  "register.lockAfter",
  "register.actBy",
  "register.countWhileLocked",
  "register.attend",
  "register.verify",
  "athletes.list",
  "athletes.page",
  "records.save",
  "records.bin",
  "records.takeOut",
  "records.previewErasure",
  "records.erase",
  "bin.read",
  "sessions.open",
  "sessions.start",
  "sessions.note",
  "sessions.keep",
  "limits.read",
  "limits.set",
  "copies.read",
  "copies.verify",
  "copies.forget",
  "backups.make",
  "backups.preview",
  "backups.restore",
  "archive.export",
  "archive.import",
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
