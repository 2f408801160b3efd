import { createHash } from "node:crypto";
import { BeyondLimits, readJson } from "../../bounded-json/read-json.ts";
import { RequestRefused } from "../../refusals/request-refused.ts";
import { type ByteSource, openFile } from "../byte-source.ts";
import type { RecordKind } from "../record-schemas.ts";
import { isSealed, openSealed, StaysSealed } from "../sealed-file.ts";
import {
  type ArchivedRecord,
  type ArchiveManifest,
  archivedKinds,
  manifestEntrySchema,
  manifestName,
  manifestSchema,
  recordsName,
  wholeChecksumWord,
} from "./archive-format.ts";
import { archiveLimits, manifestLimits, recordsByteLimit } from "./archive-limits.ts";
import { archivedRecords } from "./archived-records.ts";
import { readZip, type ZipReading } from "./read-zip.ts";

/** An archive that is as it was written; each recording is checked once more when it is taken out. */
export interface ArchiveReading {
  /** The records of a kind, one after another, each checked by its schema. */
  readonly records: (kind: RecordKind) => Iterable<ArchivedRecord>;
  /** The SHA-256 of each recording of a session. */
  readonly sumsOf: (session: string) => readonly string[];
  /** Every entry but the manifest. */
  readonly names: readonly string[];
  /** The original bytes of one entry, checked against the manifest. */
  readonly bytesOf: (name: string) => Uint8Array;
  /** Size and SHA-256 of an entry as the manifest says them; undefined where it holds none of that name. */
  readonly listed: (name: string) => { readonly bytes: number; readonly sha256: string } | undefined;
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
 * Lends an archive, sealed or not, after it was checked as a whole; the work is done without waiting, so that it can be
 * one transaction.
 * @throws RequestRefused when it is none, was altered, was made by a newer version, is beyond what an archive may hold, or
 * its passphrase is another one
 */
export async function withArchive<Result>(
  path: string,
  passphrase: Uint8Array | undefined,
  work: (archive: ArchiveReading) => Result,
): Promise<Result> {
  const file = openFile(path);
  try {
    const sealed = isSealed(file);
    if (sealed && passphrase === undefined) {
      throw new StaysSealed("This archive is under a passphrase: give it to open it.");
    }
    if (!sealed || passphrase === undefined) return work(await readArchive(file));
    const plain = openSealed(file, passphrase);
    try {
      return work(await readArchive(plain));
    } finally {
      plain.close();
    }
  } finally {
    file.close();
  }
}

async function readArchive(source: ByteSource): Promise<ArchiveReading> {
  const zip = await readZip(source);
  checkWhole(source, zip.comment);
  const manifest = readManifest(zip);
  const listed = new Map(manifest.entries.map((entry) => [entry.name, entry]));
  for (const name of zip.names) {
    if (name !== manifestName && !listed.has(name)) {
      throw new RequestRefused(`The archive holds ${name}, which its manifest does not list; nothing of it was used.`);
    }
  }
  if (listed.size !== manifest.entries.length) {
    throw new RequestRefused("The archive's manifest lists an entry twice; nothing of it was used.");
  }
  await checkEntries(zip, manifest);
  const bytesOf = (name: string) => {
    const entry = listed.get(name);
    const bytes = zip.read(name, entry?.bytes ?? 0);
    if (entry?.sha256 === createHash("sha256").update(bytes).digest("hex")) return bytes;
    throw notAsListed(name);
  };
  const records = function* (kind: RecordKind) {
    if (listed.has(recordsName(kind))) yield* archivedRecords(kind, bytesOf(recordsName(kind)));
  };
  const sums = new Map<string, string[]>();
  for (const kind of archivedKinds) {
    for (const record of records(kind)) if (kind === "recordings") noteSum(sums, record);
  }
  return {
    records,
    sumsOf: (session) => sums.get(session) ?? [],
    names: [...listed.keys()],
    bytesOf,
    listed: (name) => listed.get(name),
  };
}

/** Sizes before anything is unpacked, and what is large by its SHA-256, so that a small file cannot fill the memory. */
async function checkEntries(zip: ZipReading, { entries }: ArchiveManifest): Promise<void> {
  const ofRecords = new Set(archivedKinds.map(recordsName));
  for (const { name, bytes, sha256 } of entries) {
    const size = zip.sizeOf(name);
    if (size === undefined) throw new RequestRefused(`The archive lacks ${name}; nothing of it was used.`);
    if (size > bytes) throw new RequestRefused(`${name} is damaged in the archive; nothing of it was used.`);
    if (ofRecords.has(name) && bytes > recordsByteLimit) {
      throw new RequestRefused(`${name} in the archive is larger than 128 MB; nothing of it was used.`);
    }
    if (bytes > archiveLimits.readInPieces && (await zip.sha256Of(name)) !== sha256) throw notAsListed(name);
  }
}

/** The content has just passed the schema of recordings. */
function noteSum(sums: Map<string, string[]>, { references, content }: ArchivedRecord): void {
  const { sha256 } = content as { readonly sha256: string };
  const session = references.session ?? "";
  const known = sums.get(session);
  if (known === undefined) sums.set(session, [sha256]);
  else known.push(sha256);
}

function notAsListed(name: string): RequestRefused {
  return new RequestRefused(`${name} in the archive is not what its manifest says; nothing of it was used.`);
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
  if ((zip.sizeOf(manifestName) ?? 0) > manifestLimits.bytes) {
    throw new RequestRefused("The archive was not used: its manifest is larger than 80 MB.");
  }
  const document = manifestIn(zip.read(manifestName));
  const read = manifestSchema.safeParse(document);
  const entries: ArchiveManifest["entries"] = [];
  for (const each of read.data?.entries ?? []) {
    const entry = manifestEntrySchema.safeParse(each);
    if (!entry.success) break;
    entries.push(entry.data);
  }
  if (read.success && entries.length === read.data.entries.length) return { ...read.data, entries };
  const version =
    typeof document === "object" && document !== null && "version" in document ? document.version : undefined;
  const why =
    typeof version === "number" && version > 1
      ? `it has version ${version}, which this program does not know`
      : "its manifest is not understood";
  throw new RequestRefused(`The archive was not used: ${why}.`);
}

function manifestIn(bytes: Uint8Array): unknown {
  try {
    return readJson(bytes, manifestLimits);
  } catch (error) {
    const why = error instanceof BeyondLimits ? `was not read: it ${error.message}` : "is no JSON";
    throw new RequestRefused(`${manifestName} in the archive ${why}; nothing of it was used.`);
  }
}
