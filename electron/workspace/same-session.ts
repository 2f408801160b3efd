import type { StoredSession } from "../files/stored-session.ts";

/**
 * True when recordings that came in under the name of an open session belong to it: its session.json names the same
 * athlete and day, or some of the files are there already, byte for byte, and none of the same name is another one.
 * Names of folders alone decide nothing: "month-7" is a folder of many athletes.
 */
export function isSameSession(open: StoredSession, incoming: StoredSession): boolean {
  const [said, saidNow] = [open, incoming].map(({ stated: { description } }) =>
    description.athlete === undefined || description.date === undefined
      ? undefined
      : `${description.date} ${description.athlete.code}`,
  );
  if (said !== undefined && saidNow !== undefined) return said === saidNow;
  const known = new Map(open.files.map(({ path, sha256 }) => [path, sha256]));
  const shared = incoming.files.filter(({ path }) => known.has(path));
  if (shared.some(({ path, sha256 }) => known.get(path) !== sha256)) return false;
  // Loose files come one by one and belong to no folder; a folder must show that it is the same one.
  return shared.length > 0 || open.folder === "";
}
