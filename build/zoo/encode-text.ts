import type { TextEncoding } from "../../core/bytes/text-bytes.ts";

/** How the characters of a text become bytes. */
export type WrittenEncoding = "UTF-8" | "UTF-8 with mark" | "UTF-16 little" | "UTF-16 big" | "Windows-1252";

/** What a reader is expected to call it. */
export const readAs: Readonly<Record<WrittenEncoding, TextEncoding>> = {
  "UTF-8": "UTF-8",
  "UTF-8 with mark": "UTF-8",
  "UTF-16 little": "UTF-16LE",
  "UTF-16 big": "UTF-16BE",
  "Windows-1252": "Windows-1252",
};

/** A text as bytes; Windows-1252 only for the characters it shares with Latin-1. */
export function encodeText(text: string, encoding: WrittenEncoding): Uint8Array {
  switch (encoding) {
    case "UTF-8":
      return new TextEncoder().encode(text);
    case "UTF-8 with mark":
      return new TextEncoder().encode(`\ufeff${text}`);
    case "Windows-1252":
      return Uint8Array.from(text, (character) => {
        const code = character.charCodeAt(0);
        if (code > 255) throw new RangeError(`${character} is not in this encoding.`);
        return code;
      });
    case "UTF-16 little":
    case "UTF-16 big": {
      const bytes = new Uint8Array(2 * text.length + 2);
      const view = new DataView(bytes.buffer);
      const isLittle = encoding === "UTF-16 little";
      view.setUint16(0, 0xfeff, isLittle);
      for (let index = 0; index < text.length; index++) {
        view.setUint16(2 + 2 * index, text.charCodeAt(index), isLittle);
      }
      return bytes;
    }
  }
}
