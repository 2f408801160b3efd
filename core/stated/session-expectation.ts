import type { z } from "zod";
import type { Place } from "../ground/place.ts";

type Issue = z.core.$ZodIssue;

const kinds: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "an object in braces",
};

function limitWords(issue: Issue & { readonly code: "too_small" | "too_big" }): string {
  if (issue.origin === "string") return "text that is not empty";
  const whole = issue.origin === "int" ? "a whole number" : "a number";
  if (issue.code === "too_small") return `${whole} ${issue.inclusive ? "from" : "above"} ${issue.minimum}`;
  return `${whole} ${issue.inclusive ? "up to" : "below"} ${issue.maximum}`;
}

/** What the schema wanted where an entry did not fit, completing "… is expected". */
export function expectationOf(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return kinds[issue.expected] ?? issue.expected;
    case "invalid_value":
      return `one of ${issue.values.map(String).join(", ")}`;
    case "too_small":
    case "too_big":
      return limitWords(issue);
    case "invalid_format":
      return issue.format === "date" ? "a date written YYYY-MM-DD" : issue.format;
    case "invalid_union":
      return "a column's number from 1 or a column's name";
    case "unrecognized_keys":
      return `no entry called ${issue.keys.map((key) => `"${key}"`).join(" or ")}`;
    default:
      return issue.message;
  }
}

/** The place named by findings about a document of which nothing could be used. */
export const wholeDocument: Place = { at: "whole document" };

/** The place of a finding at such a path. */
export function placeOf(path: string): Place {
  return path === "" ? { at: "whole" } : { at: "name", name: path };
}

/** A place inside the document: `files[2].rateHz`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((said, part) => {
    if (typeof part === "number") return `${said}[${part}]`;
    return said === "" ? String(part) : `${said}.${String(part)}`;
  }, "");
}

/** The value at a place inside a document; undefined where there is none. */
export function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, part)
        ? (value as Readonly<Record<PropertyKey, unknown>>)[part]
        : undefined,
    document,
  );
}

/** A value as it stands in the document, shortened. */
export function foundText(value: unknown): string {
  if (value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
