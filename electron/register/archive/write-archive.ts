import { createHash } from "node:crypto";
import { engineVersion } from "../../../core/ground/version.ts";
import { noteCopy, placeForCopy } from "../backups.ts";
import type { ByteSink } from "../byte-source.ts";
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
  manifestName,
  recordsName,
  wholeChecksumWord,
} from "./archive-format.ts";
import { type ArchivePlan, planArchive } from "./plan-archive.ts";
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
  const plan = planArchive(register, athlete);
  writeFileThrough(place, (file) => {
    const sink = passphrase === undefined ? file : sealInto(file, passphrase);
    writeContents(register, sink, plan);
    sink.end();
  });
  const sealed = passphrase !== undefined;
  noteCopy(register, { kind: "archive", path: place, encrypted: sealed, sealed }, athlete);
  const counts = [...plan.ids.values()].map((ids) => ids.length);
  return { records: counts.reduce((sum, count) => sum + count, 0), recordings: plan.recordings.length };
}

function writeContents(register: Register, sink: ByteSink, plan: ArchivePlan): void {
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
  for (const [name, bytes] of zipEntries(register, plan)) {
    zip.add(name, bytes);
    entries.push({ name, bytes: bytes.byteLength, sha256: createHash("sha256").update(bytes).digest("hex") });
  }
  const manifest: ArchiveManifest = {
    format: "counterpoise-register-archive",
    version: archiveVersion,
    engine: engineVersion,
    madeAt: register.circumstances.now().toISOString(),
    contents: plan.contents,
    entries,
  };
  zip.add(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`));
  const checksum = () => {
    isCounting = false;
    return whole.digest("hex");
  };
  zip.finish(wholeChecksumWord, { length: 64, text: checksum });
}

/** What is written, in its order; each is read from the register when its turn has come. */
function* zipEntries({ contents: { store } }: Register, plan: ArchivePlan): Generator<readonly [string, Uint8Array]> {
  for (const kind of archivedKinds) {
    for (const { id, name } of kind === "recordings" ? plan.recordings : []) {
      yield [name, store.readBytes(present(store.read("recordings", id)))];
    }
    const ids = plan.ids.get(kind) ?? [];
    const line = (id: string) => JSON.stringify(archived(present(store.read(kind, id)), plan.left));
    if (ids.length > 0) yield [recordsName(kind), listOf(ids, line)];
  }
}

const pieceCharacters = 65_536;

/** A JSON list, an element a line; in pieces, because the text of each would stay in memory until the last. */
function listOf(ids: readonly string[], line: (id: string) => string): Uint8Array {
  const pieces: Uint8Array[] = [];
  let piece = "[\n";
  for (const [index, id] of ids.entries()) {
    piece += `${index === 0 ? "" : ",\n"}${line(id)}`;
    if (piece.length < pieceCharacters) continue;
    pieces.push(Buffer.from(piece));
    piece = "";
  }
  return Buffer.concat([...pieces, Buffer.from(`${piece}\n]\n`)]);
}

/** Nothing else happens on this thread while an archive is written. */
function present<Found>(record: Found | undefined): Found {
  if (record === undefined) throw new Error("A record that was just listed is gone.");
  return record;
}

function archived({ id, references, content }: StoredRecord<RecordKind>, left: ReadonlySet<string>): ArchivedRecord {
  const kept = Object.entries(references).filter(([, target]) => !left.has(target));
  return { id, references: Object.fromEntries(kept), content };
}
