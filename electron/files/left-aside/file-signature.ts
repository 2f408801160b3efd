import type { OtherKind } from "../../../core/recording/other-kinds.ts";

/** Known by its first bytes: what it is, or that it may hold a recording all the same. */
type Signed = OtherKind | "may be a recording";

interface Signature {
  readonly kind: Signed;
  /** Characters stand for their codes. */
  readonly starts: string;
  /** Where the characters stand; 0 where it is not given. */
  readonly at?: number;
  /** Must follow too. */
  readonly behind?: { readonly at: number; readonly text: string };
}

// First bytes as the formats' own specifications give them (PNG, JPEG, GIF, TIFF, RIFF, ISO base media, PDF, ELF and
// others); from memory, checked against files of the kinds on a Debian system.
const signatures: readonly Signature[] = [
  { kind: "picture", starts: "\x89PNG\r\n\x1a\n" },
  { kind: "picture", starts: "\xff\xd8\xff" },
  { kind: "picture", starts: "GIF87a" },
  { kind: "picture", starts: "GIF89a" },
  { kind: "picture", starts: "II*\0" },
  { kind: "picture", starts: "MM\0*" },
  { kind: "picture", starts: "BM", behind: { at: 6, text: "\0\0\0\0" } },
  { kind: "picture", starts: "RIFF", behind: { at: 8, text: "WEBP" } },
  { kind: "picture", starts: "8BPS" },
  { kind: "picture", starts: "\0\0\x01\0\x01\0" },
  { kind: "picture", starts: "ftypheic", at: 4 },
  { kind: "picture", starts: "ftypheix", at: 4 },
  { kind: "picture", starts: "ftypmif1", at: 4 },
  { kind: "picture", starts: "ftypavif", at: 4 },
  { kind: "sound file", starts: "ftypM4A", at: 4 },
  { kind: "film", starts: "ftyp", at: 4 },
  { kind: "film", starts: "moov", at: 4 },
  { kind: "film", starts: "RIFF", behind: { at: 8, text: "AVI " } },
  { kind: "film", starts: "\x1a\x45\xdf\xa3" },
  { kind: "film", starts: "\x30\x26\xb2\x75\x8e\x66\xcf\x11" },
  { kind: "film", starts: "\0\0\x01\xba" },
  { kind: "sound file", starts: "RIFF", behind: { at: 8, text: "WAVE" } },
  { kind: "sound file", starts: "ID3" },
  { kind: "sound file", starts: "OggS" },
  { kind: "sound file", starts: "fLaC" },
  { kind: "document", starts: "%PDF-" },
  { kind: "document", starts: "{\\rtf" },
  { kind: "document", starts: "%!PS" },
  { kind: "program file", starts: "\x7fELF" },
  { kind: "program file", starts: "MZ", behind: { at: 3, text: "\0" } },
  { kind: "program file", starts: "\xcf\xfa\xed\xfe" },
  { kind: "program file", starts: "\xca\xfe\xba\xbe" },
  // A shortcut of the desktop.
  { kind: "program file", starts: "L\0\0\0\x01\x14\x02\0" },
  { kind: "may be a recording", starts: "SQLite format 3\0" },
  { kind: "may be a recording", starts: "\x1f\x8b" },
  { kind: "may be a recording", starts: "7z\xbc\xaf\x27\x1c" },
];

const packedStart = "PK\x03\x04";
const compoundStart = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1";

/** Parts that only documents for reading have, by their names inside the packed file. */
const documentParts = ["word/", "ppt/", "application/vnd.oasis.opendocument.text", "application/epub"];

/** Endings of old documents, and of messages, in the container they share with spreadsheets. */
const compoundDocuments = new Set([".doc", ".dot", ".ppt", ".pps", ".msg"]);

const pageStart = /^\s*(?:<!doctype html|<html)/i;
const drawingStart = /^\s*(?:<\?xml[^>]*>\s*)?(?:<!--[\s\S]*?-->\s*)?(?:<!doctype svg[^>]*>\s*)?<svg/i;

/** What the first bytes say; undefined where they belong to no format known here. */
export function fileSignature(head: Uint8Array, ending: string): Signed | undefined {
  const found = signatures.find(({ starts, at = 0, behind }) => {
    return holds(head, at, starts) && (behind === undefined || holds(head, behind.at, behind.text));
  });
  if (found !== undefined) return found.kind;
  if (holds(head, 0, packedStart)) {
    const text = latin(head);
    return documentParts.some((part) => text.includes(part)) ? "document" : "may be a recording";
  }
  if (holds(head, 0, compoundStart)) return compoundDocuments.has(ending) ? "document" : "may be a recording";
  const start = latin(head.subarray(0, 1024)).replace(/^\xef\xbb\xbf/, "");
  if (pageStart.test(start)) return "web page";
  return drawingStart.test(start) ? "picture" : undefined;
}

function holds(head: Uint8Array, at: number, text: string): boolean {
  for (let index = 0; index < text.length; index++) {
    if (head[at + index] !== text.charCodeAt(index)) return false;
  }
  return true;
}

/** A character a byte. */
function latin(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
}

/** So much of a file's beginning is looked at. */
export const headBytes = 65536;
