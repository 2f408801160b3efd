import { createHash } from "node:crypto";
import { archiveDocumentLimits } from "../../bounded-json/limits.ts";
import { BeyondLimits, readJson } from "../../bounded-json/read-json.ts";
import { RequestRefused } from "../../request-refused.ts";
import { type ByteSource, openFile } from "../byte-source.ts";
import { wordsOf } from "../change-set.ts";
import type { RecordKind } from "../record-schemas.ts";
import { isSealed, openSealed } from "../sealed-file.ts";
import {
  type ArchivedRecord,
  type ArchiveManifest,
  archivedKinds,
  manifestName,
  manifestSchema,
  recordsName,
  recordsSchema,
  wholeChecksumWord,
} from "./archive-format.ts";
import { readZip, type ZipReading } from "./read-zip.ts";

/** An archive of which every byte was checked. */
export interface ArchiveReading {
  readonly manifest: ArchiveManifest;
  readonly records: ReadonlyMap<RecordKind, readonly ArchivedRecord[]>;
  /** The original bytes of one entry, checked against the manifest. */
  readonly bytesOf: (name: string) => Uint8Array;
  readonly holds: (name: string) => boolean;
}

const pieceBytes = 1024 * 1024;

/** True for a file that is an archive or a sealed file by its first bytes, so that it is not taken for a recording. */
export function looksLikeArchive(path: string): boolean {
  const source = openFile(path);
  try {
    return isSealed(source) || Buffer.from(source.read(0, 4)).toString("latin1") === "PK\u0003\u0004";
  } finally {
    source.close();
  }
}

/**
 * Lends an archive, sealed or not, after it was checked as a whole.
 * @throws RequestRefused when it is none, was altered, was made by a newer version, or its passphrase is another one
 */
export function withArchive<Result>(
  path: string,
  passphrase: Uint8Array | undefined,
  work: (archive: ArchiveReading) => Result,
): Result {
  const file = openFile(path);
  try {
    const sealed = isSealed(file);
    if (sealed && passphrase === undefined) {
      throw new RequestRefused("This archive is under a passphrase: give it to open it.");
    }
    if (!sealed || passphrase === undefined) return work(readArchive(file));
    const plain = openSealed(file, passphrase);
    try {
      return work(readArchive(plain));
    } finally {
      plain.close();
    }
  } finally {
    file.close();
  }
}

function readArchive(source: ByteSource): ArchiveReading {
  const zip = readZip(source);
  checkWhole(source, zip.comment);
  const manifest = readManifest(zip);
  const listed = new Map(manifest.entries.map((entry) => [entry.name, entry]));
  for (const name of zip.names) {
    if (name !== manifestName && !listed.has(name)) {
      throw new RequestRefused(`The archive holds ${name}, which its manifest does not list; nothing of it was used.`);
    }
  }
  const inZip = new Set(zip.names);
  for (const { name } of manifest.entries) {
    if (!inZip.has(name)) throw new RequestRefused(`The archive lacks ${name}; nothing of it was used.`);
  }
  if (listed.size !== manifest.entries.length) {
    throw new RequestRefused("The archive's manifest lists an entry twice; nothing of it was used.");
  }
  const bytesOf = (name: string) => {
    const entry = listed.get(name);
    // Its size is known before anything is unpacked, so that a small file cannot fill the memory.
    const bytes = zip.read(name, entry?.bytes ?? 0);
    if (entry?.sha256 === createHash("sha256").update(bytes).digest("hex")) return bytes;
    throw new RequestRefused(`${name} in the archive is not what its manifest says; nothing of it was used.`);
  };
  const kinds = archivedKinds.filter((kind) => listed.has(recordsName(kind)));
  const records = new Map(kinds.map((kind) => [kind, readRecords(kind, bytesOf(recordsName(kind)))] as const));
  return { manifest, records, bytesOf, holds: (name) => listed.has(name) };
}

function checkWhole(source: ByteSource, comment: string): void {
  const checksumLetters = 64;
  const sum = createHash("sha256");
  const end = source.size - checksumLetters;
  for (let at = 0; at < end; at += pieceBytes) sum.update(source.read(at, Math.min(pieceBytes, end - at)));
  if (comment !== `${wholeChecksumWord}${sum.digest("hex")}`) {
    throw new RequestRefused(
      "The archive is not as it was written: its checksum does not fit. Nothing of it was used.",
    );
  }
}

function readManifest(zip: ZipReading): ArchiveManifest {
  const document = jsonIn(zip.read(manifestName, archiveDocumentLimits.bytes), manifestName);
  const read = manifestSchema.safeParse(document);
  if (read.success) return read.data;
  const version =
    typeof document === "object" && document !== null && "version" in document ? document.version : undefined;
  const why =
    typeof version === "number" && version > 1
      ? `it has version ${version}, which this program does not know`
      : "its manifest is not understood";
  throw new RequestRefused(`The archive was not used: ${why}.`);
}

function readRecords(kind: RecordKind, bytes: Uint8Array): readonly ArchivedRecord[] {
  const read = recordsSchema(kind).safeParse(jsonIn(bytes, recordsName(kind)));
  // The schema of the kind has just passed; references are identifiers by the names of its columns.
  if (read.success) return read.data as readonly ArchivedRecord[];
  const [issue] = read.error.issues;
  throw new RequestRefused(
    `The ${wordsOf(kind)} in the archive are not understood at ${issue?.path.join(".") ?? "the beginning"}; nothing of it was used.`,
  );
}

function jsonIn(bytes: Uint8Array, name: string): unknown {
  try {
    return readJson(bytes, archiveDocumentLimits);
  } catch (error) {
    if (error instanceof BeyondLimits) {
      throw new RequestRefused(`${name} in the archive was not read: it ${error.message}; nothing of it was used.`);
    }
    throw new RequestRefused(`${name} in the archive is no JSON; nothing of it was used.`);
  }
}
