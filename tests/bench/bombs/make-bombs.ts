import { createHash, randomUUID } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { ZipWriter } from "../../../electron/register/archive/write-zip.ts";

/** What reads a bomb: each is given to the program's own reader of its kind. */
export type BombKind = "archive" | "session" | "layout" | "preferences" | "request";

export interface Bomb {
  readonly what: string;
  readonly kind: BombKind;
  readonly make: () => Uint8Array;
}

const sum = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const repeated = (text: string, times: number) => Buffer.alloc(text.length * times, text);

/** An archive with every checksum right. */
function archive(entries: readonly (readonly [string, Uint8Array])[], manifest?: Uint8Array): Buffer {
  const parts: Uint8Array[] = [];
  const zip = new ZipWriter({ write: (bytes) => parts.push(bytes), end: () => undefined });
  for (const [name, bytes] of entries) zip.add(name, bytes);
  const listed = entries.map(([name, bytes]) => ({ name, bytes: bytes.byteLength, sha256: sum(bytes) }));
  const document = {
    format: "counterpoise-register-archive",
    version: 1,
    engine: "0",
    madeAt: "2026-11-02T08:00:00.000Z",
    contents: "register",
    entries: listed,
  };
  zip.add("manifest.json", manifest ?? Buffer.from(JSON.stringify(document)));
  const text = () => sum(Buffer.concat(parts));
  zip.finish("SHA-256 of everything before this sentence: ", { length: 64, text });
  return Buffer.concat(parts);
}

/** The list of contents names one entry under many names, all at the same bytes. */
function overlapping(): Buffer {
  const zip = archive(Array.from({ length: 2000 }, (_, index) => [`recordings/${index}`, Buffer.alloc(64, index)]));
  const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  const start = zip.readUInt32LE(end + 16);
  const first = zip.readUInt32LE(start + 42);
  for (let at = start; zip.readUInt32LE(at) === 0x02014b50; ) {
    zip.writeUInt32LE(first, at + 42);
    at += 46 + zip.readUInt16LE(at + 28) + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  zip.write(sum(zip.subarray(0, -64)), zip.length - 64, "latin1");
  return zip;
}

/** The end of a zip that promises a list of contents of 4 million entries. */
function hugeDirectory(): Buffer {
  const zip = archive([["recordings/a", Buffer.from("a")]]);
  const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  const locator = Buffer.alloc(20);
  const record = Buffer.alloc(56);
  record.writeUInt32LE(0x06064b50, 0);
  record.writeBigUInt64LE(4_000_000n, 24);
  record.writeBigUInt64LE(4_000_000n, 32);
  record.writeBigUInt64LE(BigInt(zip.readUInt32LE(end + 16)), 48);
  locator.writeUInt32LE(0x07064b50, 0);
  locator.writeBigUInt64LE(BigInt(end), 8);
  return Buffer.concat([zip.subarray(0, end), record, locator, zip.subarray(end)]);
}

const padded = (bytes: Uint8Array) => [`recordings/${randomUUID()}/noise`, bytes] as const;
/** Keeps an archive below the limit of growth, so that what is tried is the limit behind it. */
const noise = () =>
  padded(Buffer.concat(Array.from({ length: 50_000 }, () => createHash("sha256").update(randomUUID()).digest())));

export const bombs: readonly Bomb[] = [
  {
    what: "zip whose manifest is 240 MB of brackets",
    kind: "archive",
    make: () => archive([], repeated("[", 240_000_000)),
  },
  {
    what: "zip with a manifest of 70 MB of brackets",
    kind: "archive",
    make: () => archive([noise()], repeated("[", 70_000_000)),
  },
  {
    what: "zip with 75 MB of manifest entries that are none",
    kind: "archive",
    make: () =>
      archive(
        [noise()],
        Buffer.concat([Buffer.from('{"entries":['), repeated("{},", 25_000_000), Buffer.from("{}]}")]),
      ),
  },
  {
    what: "zip of one entry of 900 MB",
    kind: "archive",
    make: () => archive([["records/athletes.json", Buffer.alloc(900_000_000, 32)]]),
  },
  {
    what: "zip with 120 MB of records that are none",
    kind: "archive",
    make: () => archive([noise(), ["records/athletes.json", repeated("[", 120_000_000)]]),
  },
  {
    what: "zip with a list of 40 million empty records",
    kind: "archive",
    make: () =>
      archive([
        noise(),
        ["records/athletes.json", Buffer.concat([Buffer.from("["), repeated("{},", 40_000_000), Buffer.from("{}]")])],
      ]),
  },
  { what: "zip whose entries share their bytes", kind: "archive", make: overlapping },
  { what: "zip that promises 4 million entries", kind: "archive", make: hugeDirectory },
  { what: "session.json of 20 MB of brackets", kind: "session", make: () => repeated("[", 20_000_000) },
  { what: "session.json of 8 MB of brackets", kind: "session", make: () => repeated("[", 8_000_000) },
  {
    what: "session.json of 2.6 million empty objects",
    kind: "session",
    make: () => Buffer.concat([Buffer.from('{"files":['), repeated("{},", 2_600_000), Buffer.from("{}]}")]),
  },
  {
    what: "session.json of 60,000 entries that are none",
    kind: "session",
    make: () => Buffer.concat([Buffer.from('{"files":['), repeated("{},", 60_000), Buffer.from("{}]}")]),
  },
  {
    what: "session.json with one text of 7 MB",
    kind: "session",
    make: () => Buffer.from(`{"note":"${"x".repeat(7_000_000)}"}`),
  },
  { what: "saved layout of 300 MB of brackets", kind: "layout", make: () => repeated("[", 300_000_000) },
  { what: "preferences of 300 MB of brackets", kind: "preferences", make: () => repeated("[", 300_000_000) },
  { what: "request of 16 MB of brackets", kind: "request", make: () => repeated("[", 16_000_000) },
  {
    what: "request of 5 million values",
    kind: "request",
    make: () => Buffer.concat([Buffer.from("["), repeated("0,", 5_000_000), Buffer.from("0]")]),
  },
  {
    what: "request that wants 60 MB a thousand times",
    kind: "request",
    make: () =>
      Buffer.concat([Buffer.from(`[${'{"$bytes":[0,60000000]},'.repeat(1000)}0]\0`), Buffer.alloc(60_000_000)]),
  },
];

/** Where a bomb lies in a folder, under the name that its reader looks for. */
export function placeOf(folder: string, kind: BombKind): string {
  return join(
    folder,
    kind === "session" ? "session.json" : kind === "preferences" ? "preferences.json" : `bomb.${kind}`,
  );
}

export function layBomb(folder: string, { kind, make }: Bomb): number {
  const bytes = make();
  writeFileSync(placeOf(folder, kind), bytes);
  return bytes.byteLength;
}
