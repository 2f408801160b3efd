import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { sealHeaderLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { ByteSink, ByteSource } from "./byte-source.ts";
import { derivationSchema, deriveKey, newDerivation } from "./passphrase-key.ts";

/**
 * A file under a passphrase: eight letters, the length of a header, the header (how the key follows from the
 * passphrase), then pieces under AES-256-GCM. Each piece is bound to the header, to its number and to whether it is
 * the last, so that nothing can be altered, reordered, left out or cut off unseen.
 */
const magic = Buffer.from("CPSEAL1\n");
const cipher = "aes-256-gcm";
const pieceBytes = 65_536;
const tagBytes = 16;
const noncePrefixBytes = 7;

const headerSchema = z.strictObject({
  derivation: derivationSchema,
  pieceBytes: z.literal(pieceBytes),
  noncePrefix: z.base64().refine((prefix) => Buffer.from(prefix, "base64").byteLength === noncePrefixBytes),
});

function nonceOf(prefix: Uint8Array, piece: number, isLast: boolean): Uint8Array {
  const nonce = Buffer.alloc(12);
  nonce.set(prefix);
  nonce.writeUInt32BE(piece, noncePrefixBytes);
  nonce[11] = isLast ? 1 : 0;
  return nonce;
}

/** A sealed file could not be opened: its passphrase is not given or another one, or it was altered. */
export class StaysSealed extends RequestRefused {}

/** Seals what is written to it, piece by piece, into another sink. */
export function sealInto(sink: ByteSink, passphrase: Uint8Array): ByteSink {
  const derivation = newDerivation();
  const prefix = randomBytes(noncePrefixBytes);
  const header = Buffer.from(JSON.stringify({ derivation, pieceBytes, noncePrefix: prefix.toString("base64") }));
  const length = Buffer.alloc(4);
  length.writeUInt32BE(header.byteLength);
  const head = Buffer.concat([magic, length, header]);
  const key = deriveKey(passphrase, derivation);
  sink.write(head);
  const waiting = Buffer.alloc(pieceBytes);
  let filled = 0;
  let piece = 0;
  const seal = (isLast: boolean) => {
    const encryption = createCipheriv(cipher, key, nonceOf(prefix, piece, isLast)).setAAD(head);
    const encrypted = encryption.update(waiting.subarray(0, filled));
    sink.write(Buffer.concat([encrypted, encryption.final(), encryption.getAuthTag()]));
    piece += 1;
    filled = 0;
  };
  return {
    write: (bytes) => {
      let taken = 0;
      while (taken < bytes.byteLength) {
        // A full piece waits until it is known not to be the last.
        if (filled === pieceBytes) seal(false);
        const part = bytes.subarray(taken, taken + pieceBytes - filled);
        waiting.set(part, filled);
        filled += part.byteLength;
        taken += part.byteLength;
      }
    },
    end: () => {
      seal(true);
      key.fill(0);
      sink.end();
    },
  };
}

export function isSealed(source: ByteSource): boolean {
  return Buffer.compare(source.read(0, magic.byteLength), magic) === 0;
}

/**
 * What was sealed, readable from any place. Every piece is checked once before anything of it is given out.
 * @throws RequestRefused when the passphrase is another one or any byte was altered
 */
export function openSealed(source: ByteSource, passphrase: Uint8Array): ByteSource {
  const headerLength = Buffer.from(source.read(magic.byteLength, 4));
  const headerEnd = magic.byteLength + 4 + (headerLength.byteLength === 4 ? headerLength.readUInt32BE() : 0);
  const plausible = isSealed(source) && headerEnd <= Math.min(source.size, 4096);
  const head = plausible ? source.read(0, headerEnd) : new Uint8Array();
  const header = readHeader(head.subarray(magic.byteLength + 4));
  if (header === undefined) throw new RequestRefused("The file's beginning is damaged; nothing of it was used.");
  const prefix = Buffer.from(header.noncePrefix, "base64");
  const key = deriveKey(passphrase, header.derivation);
  const storedPieceBytes = pieceBytes + tagBytes;
  const pieces = Math.max(1, Math.ceil((source.size - headerEnd) / storedPieceBytes));
  const openPiece = (piece: number): Uint8Array => {
    const stored = source.read(headerEnd + piece * storedPieceBytes, storedPieceBytes);
    if (stored.byteLength < tagBytes) throw altered();
    const end = stored.byteLength - tagBytes;
    const decryption = createDecipheriv(cipher, key, nonceOf(prefix, piece, piece === pieces - 1))
      .setAAD(head)
      .setAuthTag(stored.subarray(end));
    const plain = decryption.update(stored.subarray(0, end));
    try {
      decryption.final();
    } catch {
      throw altered();
    }
    return plain;
  };
  let size = 0;
  try {
    for (let piece = 0; piece < pieces; piece += 1) size += openPiece(piece).byteLength;
  } catch (error) {
    key.fill(0);
    throw error;
  }
  let held = { piece: -1, plain: new Uint8Array() };
  return {
    size,
    read: (offset, length) => {
      const parts: Uint8Array[] = [];
      const end = Math.min(size, offset + length);
      for (let at = offset; at < end; ) {
        const piece = Math.floor(at / pieceBytes);
        if (held.piece !== piece) held = { piece, plain: new Uint8Array(openPiece(piece)) };
        const part = held.plain.subarray(at - piece * pieceBytes, end - piece * pieceBytes);
        parts.push(part);
        at += part.byteLength;
      }
      return Buffer.concat(parts);
    },
    // What it is sealed in belongs to who opened that.
    close: () => void key.fill(0),
  };
}

function readHeader(bytes: Uint8Array): SchemaType<typeof headerSchema> | undefined {
  try {
    const read = headerSchema.safeParse(readJson(bytes, sealHeaderLimits));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
}

function altered(): StaysSealed {
  return new StaysSealed("The passphrase is another one, or the file was altered; nothing of it was used.");
}
