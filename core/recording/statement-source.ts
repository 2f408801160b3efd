import type { StatementSource, WrittenLine } from "../ground/findings/file-parts.ts";
import type { HeaderHint } from "./header-hint.ts";

/** The line that a hint stands in. */
export function lineOf({ line, written }: HeaderHint): WrittenLine {
  return { line, written };
}

/** "stated", "by the layout "Lab A"", "line 3: Sampling rate: 1000 Hz": where the reading of a file says something stands. */
export function sourceText(source: StatementSource): string {
  switch (source.from) {
    case "person":
      return "stated";
    case "layout":
      return `by the layout "${source.name}"`;
    case "line":
      return `line ${source.line}: ${source.written.length > 80 ? `${source.written.slice(0, 80)}…` : source.written}`;
  }
}
