import type { RecordingFile } from "../../core/recording/file.ts";
import { comparePaths } from "../files/recording-names.ts";
import type { StoredSession } from "../files/stored-session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { Register } from "../register/register.ts";
import { descriptionOf, readingFindingsOf } from "../register/session-conversion.ts";
import { earlierMass } from "./earlier-mass.ts";

/**
 * A session of the register as the workspace holds it.
 * @param taken folders of sessions that are open already
 * @throws RequestRefused where there is no such session
 */
export function keptSession(register: Register, id: string, taken: ReadonlySet<string>): StoredSession {
  const session = readKeptSession(register, id, []);
  if (session === undefined) throw new RequestRefused("This session is no longer in the register.");
  const record = register.reads.record("sessions", id);
  const { athlete, date } = session.stated.description;
  const label = record?.content.folder || [athlete?.code, date].filter((part) => part !== undefined).join("/");
  return { folder: freeFolder(label, taken), keptAs: id, ...session };
}

/** Its recordings and what is said about it; recordings at hand are not read again. */
export function readKeptSession(
  register: Register,
  id: string,
  known: readonly RecordingFile[],
): Pick<StoredSession, "files" | "stated" | "earlierMass"> | undefined {
  const described = register.reads.describedSession(id);
  if (described === undefined || described.athlete?.binned) return undefined;
  const files = described.recordings
    .map((recording): RecordingFile => {
      const { path, sha256 } = recording.content;
      const atHand = known.find((each) => each.path === path && each.sha256 === sha256);
      return atHand ?? { path, sha256, bytes: register.reads.recordingBytes(recording) };
    })
    .toSorted((first, second) => comparePaths(first.path, second.path));
  const earlier = earlierMass(register, id);
  return {
    files,
    ...(earlier !== undefined && { earlierMass: earlier }),
    stated: { description: descriptionOf(described), findings: readingFindingsOf(described.session) },
  };
}

/** The label itself, or the first of "label (2)", "label (3)", … that no open session has; never the one of loose files. */
export function freeFolder(label: string, taken: ReadonlySet<string>): string {
  const name = label === "" ? "session" : label;
  for (let number = 1; ; number += 1) {
    const free = number === 1 ? name : `${name} (${number})`;
    if (!taken.has(free)) return free;
  }
}
