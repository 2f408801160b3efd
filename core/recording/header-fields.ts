import { withoutCommentMark } from "../bytes/skipped-lines.ts";
import type { Table } from "../bytes/table.ts";

/** One thing a line above the rows says; the key is "" where the line is prose. */
export interface HeaderField {
  readonly key: string;
  readonly value: string;
  /** From 1. */
  readonly line: number;
  /** The whole line as written. */
  readonly written: string;
}

/** What the lines above the rows say, column names aside: facts as key and value, other lines as prose. */
export function fieldsAbove({ header, headerFields, dialect, names, units }: Table): HeaderField[] {
  const lastFilled = header.findLastIndex((line) => line.trim() !== "");
  const holdsAll = (text: string, words: readonly string[]): boolean => {
    const filled = words.filter((word) => word !== "");
    return filled.length > 0 && filled.every((word) => text.includes(word));
  };
  return header.flatMap((written, index): HeaderField[] => {
    const place = { line: index + 1, written: written.trim() };
    const facts = headerFields.filter((field) => field.line === place.line);
    if (facts.length > 0) return facts.map(({ key, value }) => ({ key, value, ...place }));
    const value = withoutCommentMark(written, dialect.delimiter).trim();
    const isUnits = index === lastFilled && holdsAll(value, units);
    const isNames = index >= lastFilled - 1 && holdsAll(value, names);
    return value === "" || isUnits || isNames ? [] : [{ key: "", value, ...place }];
  });
}
