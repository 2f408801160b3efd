import { RequestRefused } from "../../refusals/request-refused.ts";
import { withDependents } from "../erase-records.ts";
import type { RecordKind } from "../record-schemas.ts";
import type { StoredRecord } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { type ArchiveManifest, archivedKinds, keyText, recordingName, secondRecordingName } from "./archive-format.ts";
import { archiveLimits } from "./archive-limits.ts";

/** What an archive is going to hold: identifiers alone, because contents would fill the memory. */
export interface ArchivePlan {
  readonly contents: ArchiveManifest["contents"];
  readonly ids: ReadonlyMap<RecordKind, readonly string[]>;
  readonly recordings: readonly { readonly id: string; readonly name: string }[];
  /** What stays behind: the bin, and what belongs to something in it. */
  readonly left: ReadonlySet<string>;
}

/**
 * Chooses what goes into an archive of one athlete, or of the whole register.
 * @throws RequestRefused when there is no such athlete, or more than an archive may hold
 */
export function planArchive(register: Register, athlete: string | undefined): ArchivePlan {
  const { store } = register.contents;
  const chosen = athlete === undefined ? undefined : recordsOfAthlete(register, athlete);
  const taken = new Set<string>();
  const freeName = ({ id, references, content }: StoredRecord<"recordings">) => {
    const session = references.session ?? "";
    const name = recordingName(session, content.path);
    return taken.has(name) ? secondRecordingName(session, content.path, id) : name;
  };
  const left = new Set<string>();
  const ids = new Map<RecordKind, string[]>(archivedKinds.map((kind) => [kind, []]));
  const recordings: { id: string; name: string }[] = [];
  for (const kind of archivedKinds) {
    for (const record of store.readAll(kind)) {
      if (chosen !== undefined && !chosen.has(keyText(record))) continue;
      if (record.binned || pointsAtLeft(record, left)) {
        left.add(record.id);
        continue;
      }
      ids.get(kind)?.push(record.id);
      if (kind !== "recordings") continue;
      const recording = record as StoredRecord<"recordings">;
      const name = freeName(recording);
      taken.add(name);
      recordings.push({ id: record.id, name });
    }
  }
  checkSize(recordings.length);
  return { contents: chosen === undefined ? "register" : "athlete", ids, recordings, left };
}

/** What is written must be readable again. */
function checkSize(recordings: number): void {
  const most = archiveLimits.entries - archivedKinds.length - 1;
  if (recordings <= most) return;
  throw new RequestRefused(
    `One archive holds at most ${most.toLocaleString("en-US")} recordings: export one athlete at a time, or make a backup.`,
  );
}

function recordsOfAthlete(register: Register, id: string): ReadonlySet<string> {
  const { store } = register.contents;
  if (store.read("athletes", id)?.binned !== false)
    throw new RequestRefused("There is no such athlete in the register.");
  const keys = withDependents(store, [{ kind: "athletes", id }]);
  const protocols = keys
    .filter(({ kind }) => kind === "sessions")
    .map((session) => store.read("sessions", session.id)?.references.protocol)
    .filter((protocol) => protocol !== undefined);
  return new Set([...keys.map(keyText), ...protocols.map((protocol) => keyText({ kind: "protocols", id: protocol }))]);
}

/** What belongs to something in the bin stays behind with it. */
function pointsAtLeft({ kind, references }: StoredRecord, left: ReadonlySet<string>): boolean {
  const parents: readonly (string | undefined)[] = [references.athlete, references.session, references.recording];
  return kind !== "athletes" && parents.some((id) => id !== undefined && left.has(id));
}
