import type { Delimiter } from "./fields.ts";

/** True for a line without anything to read. */
export function isBlankLine(line: string): boolean {
  return line.trim() === "";
}

const commentStart = /^\s*(?:#|%|\/\/)/;
const commentOrSemicolon = /^\s*(?:#|%|\/\/|;)/;

/** True for a line that starts with a comment mark: `#`, `%`, `//`, and `;` where it separates no columns. */
export function isCommentLine(line: string, delimiter: Delimiter = "semicolon"): boolean {
  return (delimiter === "semicolon" ? commentStart : commentOrSemicolon).test(line);
}

/** The line without its comment mark. */
export function withoutCommentMark(line: string, delimiter: Delimiter = "semicolon"): string {
  if (!isCommentLine(line, delimiter)) return line;
  return line.replace(delimiter === "semicolon" ? /^\s*(?:#|%|\/\/)+/ : /^\s*(?:#|%|\/\/|;)+/, "").trim();
}
