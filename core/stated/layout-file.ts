import { beyondJsonLimits, beyondWords, layoutLimits } from "../bytes/json-bounds.ts";
import { readText, textBetween } from "../bytes/text-bytes.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { Layout } from "./layout.ts";
import { layoutSchema } from "./layout.ts";
import { expectationOf, foundText, pathText, placeOf, valueAt, wholeDocument } from "./session-expectation.ts";

/** More places than a person would go through. */
const mostPlacesNamed = 20;

/** Reads a saved layout. Never throws; what is no layout is not used, and the finding names the place. */
export function parseLayout(bytes: Uint8Array): { readonly layout?: Layout; readonly findings: readonly Finding[] } {
  const beyond = (limit: keyof typeof layoutLimits) => ({
    findings: [
      finding(
        "layout-unreadable/beyond-limits",
        "warning",
        { reason: beyondWords(limit, layoutLimits) },
        { place: wholeDocument },
      ),
    ],
  });
  if (bytes.length > layoutLimits.bytes) return beyond("bytes");
  const decoded = readText(bytes);
  const limit = beyondJsonLimits(decoded.bytes, layoutLimits);
  if (limit !== undefined) return beyond(limit);
  let document: unknown;
  try {
    document = JSON.parse(textBetween(decoded, 0, decoded.bytes.length));
  } catch {
    return { findings: [finding("layout-unreadable/no-json", "warning", {}, { place: wholeDocument })] };
  }
  const read = layoutSchema.safeParse(document);
  if (read.success) return { layout: read.data, findings: [] };
  const findings = read.error.issues.slice(0, mostPlacesNamed).map((issue) => {
    const path = pathText(issue.path);
    const found = issue.code === "unrecognized_keys" ? {} : { found: foundText(valueAt(document, issue.path)) };
    return finding(
      "layout-unreadable/entry",
      "warning",
      { path, expected: expectationOf(issue), ...found },
      { place: placeOf(path) },
    );
  });
  return { findings };
}

/** The text of a saved layout: keys in one order, two spaces, a final newline; reads back to the same layout. */
export function writeLayout(layout: Layout): string {
  const { schemaVersion, name, shape, answers } = layout;
  const { delimiter, decimalMark, columns, headerKeys } = shape;
  const known = Object.keys(layoutSchema.shape.answers.shape) as (keyof Layout["answers"])[];
  const ordered = {
    schemaVersion,
    name,
    shape: {
      delimiter,
      decimalMark,
      columns: columns.map((column) => ({ name: column.name, unit: column.unit })),
      headerKeys,
    },
    answers: Object.fromEntries(known.flatMap((key) => (answers[key] === undefined ? [] : [[key, answers[key]]]))),
  };
  return `${JSON.stringify(ordered, null, 2)}\n`;
}
