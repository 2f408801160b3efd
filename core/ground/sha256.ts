import { sha256 } from "@noble/hashes/sha2.js";

/** SHA-256 as 64 lower-case hexadecimal digits. Text must be ASCII, so that its bytes are beyond doubt. */
export function sha256Hex(content: Uint8Array | string): string {
  const bytes = typeof content === "string" ? asciiBytes(content) : content;
  let hex = "";
  for (const byte of sha256(bytes)) hex += byte.toString(16).padStart(2, "0");
  return hex;
}

function asciiBytes(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => {
    const code = character.charCodeAt(0);
    if (code > 127) throw new RangeError("Only ASCII text is hashed.");
    return code;
  });
}
