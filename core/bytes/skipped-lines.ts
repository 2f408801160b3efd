/** True for a line without anything to read. */
export function isBlankLine(line: string): boolean {
  return line.trim() === "";
}

const commentStart = /^\s*(?:#|%|\/\/)/;

/** True for a line that starts with a comment mark: `#`, `%` or `//`. */
export function isCommentLine(line: string): boolean {
  return commentStart.test(line);
}

/** The line without its comment mark. */
export function withoutCommentMark(line: string): string {
  return line.replace(/^\s*(?:#|%|\/\/)+/, "").trim();
}
