/** What one document may hold at most. Each kind of document has its own; they are looked at before it is parsed. */
export interface JsonLimits {
  readonly bytes: number;
  /** Lists and objects within each other. */
  readonly depth: number;
  /** Values and members altogether. */
  readonly elements: number;
  /** Bytes of one text. */
  readonly textBytes: number;
}

/** No setting: codes of characters. */
const quote = 0x22;
const backslash = 0x5c;
const comma = 0x2c;
const openList = 0x5b;
const closeList = 0x5d;
const openObject = 0x7b;
const closeObject = 0x7d;

/**
 * Which limit a JSON document is beyond, by one pass over its bytes that makes nothing of them: a parser would first make
 * fifty bytes of memory of each two of the file. Bytes that are no JSON may be within; the parser then says so.
 * @param document UTF-8, or another encoding in which ASCII stands for itself
 */
export function beyondJsonLimits(document: Uint8Array, limits: JsonLimits): keyof JsonLimits | undefined {
  if (document.length > limits.bytes) return "bytes";
  let depth = 0;
  let elements = 1;
  for (let at = 0; at < document.length; at++) {
    switch (document[at]) {
      case quote: {
        const end = textEnd(document, at + 1);
        if (end - at - 1 > limits.textBytes) return "textBytes";
        at = end;
        break;
      }
      case openList:
      case openObject:
        depth++;
        elements++;
        break;
      case closeList:
      case closeObject:
        depth--;
        break;
      case comma:
        elements++;
        break;
    }
    if (depth > limits.depth) return "depth";
    if (elements > limits.elements) return "elements";
  }
  return undefined;
}

/** Where the closing quotation mark of a text stands, or the document's end. */
function textEnd(document: Uint8Array, start: number): number {
  let at = start;
  while (at < document.length && document[at] !== quote) at += document[at] === backslash ? 2 : 1;
  return Math.min(at, document.length);
}

const words: Readonly<Record<Exclude<keyof JsonLimits, "bytes">, string>> = {
  depth: "lists and objects within each other",
  elements: "values",
  textBytes: "bytes in one text",
};

/** What is said of such a document, completing "… was not read: it". */
export function beyondWords(limit: keyof JsonLimits, limits: JsonLimits): string {
  return limit === "bytes"
    ? `is larger than ${limits.bytes / 1024 / 1024} MB`
    : `holds more than ${limits[limit].toLocaleString("en-US")} ${words[limit]}`;
}

/**
 * A `session.json`: an entry of `files` takes 200 bytes and 12 elements or so, so that this is a session of more than
 * 10,000 recordings.
 */
export const sessionFileLimits: JsonLimits = {
  bytes: 8 * 1024 * 1024,
  depth: 32,
  elements: 200_000,
  textBytes: 1024 * 1024,
};

/** A saved layout: three elements and fifty bytes or so for a column, so that this is a file of 15,000 columns. */
export const layoutLimits: JsonLimits = { bytes: 1024 * 1024, depth: 32, elements: 50_000, textBytes: 64 * 1024 };
