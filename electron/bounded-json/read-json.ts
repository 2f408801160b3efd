import { beyondJsonLimits, beyondWords, type JsonLimits } from "../../core/bytes/json-bounds.ts";

/** Thrown where a document is beyond its limits; the message completes "… was not read: it". */
export class BeyondLimits extends Error {
  override readonly name = "BeyondLimits";
}

/**
 * The value of a JSON document in UTF-8, looked at by its bytes before anything is made of it.
 * @throws BeyondLimits
 * @throws SyntaxError where it is no JSON
 */
export function readJson(document: Uint8Array, limits: JsonLimits): unknown {
  const beyond = beyondJsonLimits(document, limits);
  if (beyond !== undefined) throw new BeyondLimits(beyondWords(beyond, limits));
  return JSON.parse(Buffer.from(document.buffer, document.byteOffset, document.byteLength).toString());
}
