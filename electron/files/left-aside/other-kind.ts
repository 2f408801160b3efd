import type { OtherKind } from "../../../core/recording/other-kinds.ts";
import { entriesOfFile } from "../../../core/stated/entries-by-file.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { isOwnResult } from "../recording-names.ts";
import { fileSignature, headBytes } from "./file-signature.ts";
import { holdsNoRows } from "./rowless-text.ts";

/**
 * What a file is, where its content shows that it cannot be a recording; undefined for whatever may be one, readable or
 * not: text with a row of numbers or with names of columns, spreadsheets, packed files, unknown binary files, empty ones.
 * The name decides nothing alone: it only says which text is notes and which document an old container holds.
 * @param head the first `headBytes` bytes, or all of them
 */
export function otherKindOf(name: string, head: Uint8Array, byteLength: number): OtherKind | undefined {
  if (name.startsWith(".")) return "hidden file";
  const ending = /\.[^.]+$/.exec(name.toLowerCase())?.[0] ?? "";
  const signed = fileSignature(head, ending);
  if (signed !== undefined) return signed === "may be a recording" ? undefined : signed;
  if (isOwnResult(head)) return "table of results";
  return holdsNoRows(head, byteLength, ending) ? "text" : undefined;
}

/** The same for a whole file in memory. */
export function otherKindOfFile(name: string, bytes: Uint8Array): OtherKind | undefined {
  return otherKindOf(name, bytes.subarray(0, headBytes), bytes.byteLength);
}

/** True where what is said of a session calls a file one of its recordings: then it stays, whatever it holds. */
export function isNamed(description: SessionDescription, name: string): boolean {
  return entriesOfFile(description, name).length > 0;
}
