import { createHash } from "node:crypto";
import { engineVersion } from "../../../core/version.ts";
import { RequestRefused } from "../../request-refused.ts";
import { noteCopy, placeForCopy } from "../backups.ts";
import type { ByteSink } from "../byte-source.ts";
import { withDependents } from "../erase-records.ts";
import { writeFileThrough } from "../file-sink.ts";
import type { RecordKind } from "../record-schemas.ts";
import type { StoredRecord } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { sealInto } from "../sealed-file.ts";
import {
  type ArchivedRecord,
  type ArchiveManifest,
  archivedKinds,
  archiveVersion,
  keyText,
  manifestName,
  recordingName,
  recordsName,
  secondRecordingName,
  wholeChecksumWord,
} from "./archive-format.ts";
import { ZipWriter } from "./write-zip.ts";

/** Records and recordings that were written. */
export interface ArchiveContents {
  readonly records: number;
  readonly recordings: number;
}

export interface ArchiveOptions {
  /** One athlete; absent: the whole register. */
  readonly athlete?: string;
  readonly passphrase?: Uint8Array;
}

/**
 * Writes one athlete, or the whole register, to one archive file (ARCHIVE.md), whole or not at all. What lies in the
 * bin stays behind, and so does the journal.
 */
export function writeArchive(register: Register, path: string, options: ArchiveOptions = {}): ArchiveContents {
  const { athlete, passphrase } = options;
  const place = placeForCopy(register.file, path);
  const chosen = athlete === undefined ? undefined : recordsOfAthlete(register, athlete);
  const contents = writeFileThrough(place, (file) => {
    const sink = passphrase === undefined ? file : sealInto(file, passphrase);
    const written = writeContents(register, sink, chosen);
    sink.end();
    return written;
  });
  noteCopy(register, "archive", place, passphrase !== undefined, athlete);
  return contents;
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

function writeContents(register: Register, sink: ByteSink, chosen: ReadonlySet<string> | undefined): ArchiveContents {
  const { store } = register.contents;
  const whole = createHash("sha256");
  let isCounting = true;
  const counted: ByteSink = {
    write: (bytes) => {
      if (isCounting) whole.update(bytes);
      sink.write(bytes);
    },
    end: () => undefined,
  };
  const zip = new ZipWriter(counted);
  const entries: ArchiveManifest["entries"] = [];
  const taken = new Set<string>();
  const add = (name: string, bytes: Uint8Array) => {
    zip.add(name, bytes);
    taken.add(name);
    entries.push({ name, bytes: bytes.byteLength, sha256: createHash("sha256").update(bytes).digest("hex") });
  };
  const freeName = ({ id, references, content }: StoredRecord<"recordings">) => {
    const session = references.session ?? "";
    const name = recordingName(session, content.path);
    return taken.has(name) ? secondRecordingName(session, content.path, id) : name;
  };
  const left = new Set<string>();
  let records = 0;
  let recordings = 0;
  for (const kind of archivedKinds) {
    const lines: string[] = [];
    for (const record of store.readAll(kind)) {
      if (chosen !== undefined && !chosen.has(keyText(record))) continue;
      if (record.binned || pointsAtLeft(record, left)) {
        left.add(record.id);
        continue;
      }
      lines.push(JSON.stringify(archived(record, left)));
      records += 1;
      if (kind !== "recordings") continue;
      const recording = record as StoredRecord<"recordings">;
      add(freeName(recording), store.readBytes(recording));
      recordings += 1;
    }
    if (lines.length > 0) add(recordsName(kind), Buffer.from(`[\n${lines.join(",\n")}\n]\n`));
  }
  const manifest: ArchiveManifest = {
    format: "counterpoise-register-archive",
    version: archiveVersion,
    engine: engineVersion,
    madeAt: register.circumstances.now().toISOString(),
    contents: chosen === undefined ? "register" : "athlete",
    entries,
  };
  zip.add(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`));
  const checksum = () => {
    isCounting = false;
    return whole.digest("hex");
  };
  zip.finish(wholeChecksumWord, { length: 64, text: checksum });
  return { records, recordings };
}

/** What belongs to something in the bin stays behind with it. */
function pointsAtLeft({ kind, references }: StoredRecord, left: ReadonlySet<string>): boolean {
  const parents: readonly (string | undefined)[] = [references.athlete, references.session, references.recording];
  return kind !== "athletes" && parents.some((id) => id !== undefined && left.has(id));
}

function archived({ id, references, content }: StoredRecord<RecordKind>, left: ReadonlySet<string>): ArchivedRecord {
  const kept = Object.entries(references).filter(([, target]) => !left.has(target));
  return { id, references: Object.fromEntries(kept), content };
}
