import { z } from "zod";
import type { SchemaType } from "../../../core/ground/schema-type.ts";
import { type RecordKind, recordSchemas } from "../record-schemas.ts";
import { type RecordKey, type References, recordKinds, recordTables, referenceNames } from "../record-tables.ts";

/** Raised when a key changes its meaning or leaves; new optional keys do not raise it. ARCHIVE.md describes the format. */
export const archiveVersion = 1;

export const manifestName = "manifest.json";

/** Stands before the checksum of the whole file, at its very end. */
export const wholeChecksumWord = "SHA-256 of everything before this sentence: ";

/** The kinds that travel; where copies went concerns the register they were made from alone. */
export const archivedKinds = recordKinds.filter((kind) => kind !== "copies");

/** What a manifest says of one entry. */
export const manifestEntrySchema = z.object({
  name: z.string(),
  bytes: z.int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});

/** Its entries are looked at one by one: of a list of a million that are none, one is enough to tell. */
export const manifestSchema = z.object({
  format: z.literal("counterpoise-register-archive"),
  version: z.literal(archiveVersion),
  engine: z.string(),
  madeAt: z.iso.datetime(),
  contents: z.enum(["athlete", "register"]),
  entries: z.array(z.unknown()),
});

export type ArchiveManifest = Omit<SchemaType<typeof manifestSchema>, "entries"> & {
  readonly entries: SchemaType<typeof manifestEntrySchema>[];
};

/** One record as an archive carries it. */
export interface ArchivedRecord {
  readonly id: string;
  readonly references: References;
  readonly content: unknown;
}

export function recordsName(kind: RecordKind): string {
  return `records/${kind}.json`;
}

/** The original file of a recording, under its session and its own path, as it was imported. */
export function recordingName(session: string, path: string): string {
  return asUtf8(`recordings/${session}/${path}`);
}

/** As a zip can hold the name: half of a surrogate pair, which a file name may have, has no UTF-8. */
function asUtf8(name: string): string {
  return Buffer.from(name).toString();
}

/** Where that name is taken: two recordings of a session may have one path, when one of them came out of the bin. */
export function secondRecordingName(session: string, path: string, recording: string): string {
  return asUtf8(`recordings/${session}/${recording}/${path}`);
}

/** How one record of a kind is written. */
export function recordSchema(kind: RecordKind) {
  const needs: Readonly<Record<string, string>> = recordTables[kind];
  const names = referenceNames(kind).map(
    (name) => [name, needs[name] === "required" ? z.uuid() : z.uuid().exactOptional()] as const,
  );
  return z.strictObject({
    id: z.uuid(),
    references: z.strictObject(Object.fromEntries(names)),
    content: recordSchemas[kind],
  });
}

export function keyText({ kind, id }: RecordKey): string {
  return `${kind} ${id}`;
}
