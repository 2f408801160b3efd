import { z } from "zod";
import { beyondJsonLimits, beyondWords, sessionFileLimits } from "../bytes/json-bounds.ts";
import { readText, textBetween } from "../bytes/text-bytes.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { gateOpeningSchema, kneeReadingSchema } from "./cautions-schema.ts";
import { fileEntrySchema } from "./file-entry.ts";
import { jsonErrorOffset } from "./json-error.ts";
import { referenceValueSchema } from "./reference-value.ts";
import type { SessionDescription } from "./session.ts";
import { sessionSchema } from "./session.ts";
import { expectationOf, foundText, pathText, placeOf, valueAt, wholeDocument } from "./session-expectation.ts";
import { statedPlateSchema } from "./stated-plate.ts";

/** A session's description with what could not be read of it. */
export interface SessionFileReading {
  readonly description: SessionDescription;
  readonly findings: readonly Finding[];
}

/** Lists whose entries stand and fall one by one. */
const entrySchemas: Readonly<Record<string, z.ZodType>> = {
  plates: statedPlateSchema,
  references: referenceValueSchema,
  files: fileEntrySchema,
  readings: kneeReadingSchema,
  gateOpenings: gateOpeningSchema,
};

function issueFindings(error: z.ZodError, document: unknown, before: readonly PropertyKey[]): readonly Finding[] {
  return error.issues.map((issue) => {
    const path = [...before, ...issue.path];
    const where = pathText(path);
    const isUnknown = issue.code === "unrecognized_keys";
    const isInList = path.length > before.length && before.length > 1;
    return finding(
      "session-unreadable/entry",
      "warning",
      {
        path: where,
        expected: expectationOf(issue),
        ...(isUnknown ? {} : { found: foundText(valueAt(document, path)) }),
        ...(isInList ? { entry: pathText(before) } : {}),
      },
      { place: placeOf(where) },
    );
  });
}

/** Keys by which a person may have meant an exclusion, or a practice jump. */
const exclusionKey = /^exclu/i;
const practiceKey = /^practi/i;

/**
 * What is left of an entry of `files` that cannot be read: nothing, but where it speaks of an exclusion or of practice
 * that. A trial that somebody took out must not count because the entry that says so is misspelt.
 */
function exclusionLeft(entry: unknown): readonly unknown[] {
  if (typeof entry !== "object" || entry === null) return [];
  const excluded = exclusionSaid(said(entry, exclusionKey));
  const practice = said(entry, practiceKey) === undefined ? {} : { practice: true };
  if (excluded === undefined && practice.practice === undefined) return [];
  const read = fileEntrySchema.safeParse({
    file: valueAt(entry, ["file"]),
    ...(Object.hasOwn(entry, "trial") ? { trial: valueAt(entry, ["trial"]) } : {}),
    ...(excluded && { excluded }),
    ...practice,
  });
  return read.success ? [read.data] : [];
}

/** What an entry says under a key like this; undefined where it says nothing, or no. */
function said(entry: object, like: RegExp): unknown {
  const key = Object.keys(entry).find((name) => like.test(name));
  const value = key === undefined ? undefined : valueAt(entry, [key]);
  return value === false || value === null ? undefined : value;
}

function exclusionSaid(value: unknown): { readonly reason: string } | undefined {
  if (value === undefined) return undefined;
  const reason = valueAt(value, ["reason"]);
  const spoken = typeof value === "string" ? value : typeof reason === "string" ? reason : "";
  return { reason: spoken.trim() === "" ? "session.json excludes it in words that cannot be read" : spoken };
}

/** One entry of the document, or what is left of a list after its bad entries; undefined where nothing is left. */
function readEntry(key: string, document: Readonly<Record<string, unknown>>, findings: Finding[]): unknown {
  const value = document[key];
  const entrySchema = entrySchemas[key];
  if (entrySchema !== undefined && Array.isArray(value)) {
    return value.flatMap((entry: unknown, at) => {
      const read = entrySchema.safeParse(entry);
      if (!read.success) findings.push(...issueFindings(read.error, document, [key, at]));
      return read.success ? [read.data] : key === "files" ? exclusionLeft(entry) : [];
    });
  }
  const read = sessionSchema.shape[key as keyof typeof sessionSchema.shape].safeParse(value);
  if (!read.success) findings.push(...issueFindings(read.error, document, [key]));
  return read.success ? read.data : undefined;
}

function readDocument(document: unknown, findings: Finding[]): SessionDescription {
  if (typeof document !== "object" || document === null || Array.isArray(document)) {
    findings.push(
      finding("session-unreadable/no-object", "warning", { found: foundText(document) }, { place: wholeDocument }),
    );
    return {};
  }
  const entries = document as Readonly<Record<string, unknown>>;
  const known = Object.keys(sessionSchema.shape);
  for (const key of Object.keys(entries).filter((name) => !known.includes(name))) {
    findings.push(finding("session-unreadable/unknown-entry", "warning", { key, known }, { place: placeOf(key) }));
  }
  const read = known
    .filter((key) => Object.hasOwn(entries, key))
    .map((key) => [key, readEntry(key, entries, findings)] as const)
    .filter(([, value]) => value !== undefined);
  // Every value has just passed the schema of its own key.
  return Object.fromEntries(read) as SessionDescription;
}

function notJson(text: string): Finding {
  if (text.trim() === "") return finding("session-unreadable/empty", "warning", {}, { place: wholeDocument });
  const offset = jsonErrorOffset(text);
  const before = text.slice(0, Math.max(0, offset));
  const line = lineFeedsIn(before) + 1;
  const character = offset - before.lastIndexOf("\n");
  return finding("session-unreadable/no-json", "warning", { line, character }, { place: wholeDocument });
}

function lineFeedsIn(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count += 1;
  return count;
}

/** What is said of a `session.json` beyond its limits. */
function tooLarge(limit: keyof typeof sessionFileLimits): Finding {
  const reason = beyondWords(limit, sessionFileLimits);
  return finding("session-unreadable/beyond-limits", "warning", { reason }, { place: wholeDocument });
}

/** More places than a person would go through. */
const mostPlacesNamed = 200;

function shortened(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= mostPlacesNamed) return findings;
  const others = findings.length - mostPlacesNamed;
  return [
    ...findings.slice(0, mostPlacesNamed),
    finding("session-unreadable/more-places", "warning", { others }, { place: wholeDocument }),
  ];
}

/**
 * Reads a `session.json`. Never throws: what cannot be read becomes a finding that names the place and what is
 * expected there, and only the entry it stands in is lost (one file of `files`, one reference, one plate).
 */
export function parseSessionFile(bytes: Uint8Array): SessionFileReading {
  const findings: Finding[] = [];
  if (bytes.length > sessionFileLimits.bytes) {
    return { description: {}, findings: [tooLarge("bytes")] };
  }
  const decoded = readText(bytes);
  const beyond = beyondJsonLimits(decoded.bytes, sessionFileLimits);
  if (beyond !== undefined) {
    return { description: {}, findings: [tooLarge(beyond)] };
  }
  const text = textBetween(decoded, 0, decoded.bytes.length);
  if (decoded.encoding === "Windows-1252") {
    findings.push(
      finding(
        "encoding-guessed/session",
        "warning",
        {},
        { place: { at: "byte", byte: decoded.firstDoubtfulByte + 1 } },
      ),
    );
  }
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return { description: {}, findings: [...findings, notJson(text)] };
  }
  const description = readDocument(document, findings);
  return { description, findings: shortened(findings) };
}

/** The value with the keys of its objects in the order of the schema; keys the schema does not know are left out. */
function ordered(value: unknown, schema: unknown): unknown {
  if (schema instanceof z.ZodExactOptional || schema instanceof z.ZodReadonly) return ordered(value, schema.unwrap());
  if (schema instanceof z.ZodUnion) return ordered(value, memberOf(schema, value));
  if (schema instanceof z.ZodArray && Array.isArray(value)) return value.map((each) => ordered(each, schema.element));
  if (schema instanceof z.ZodObject && typeof value === "object" && value !== null) {
    return Object.fromEntries(
      Object.entries(schema.shape)
        .filter(([key]) => Object.hasOwn(value, key))
        .map(([key, inner]) => [key, ordered(valueAt(value, [key]), inner)]),
    );
  }
  return value;
}

/** The member of a union that a value belongs to. */
function memberOf(schema: z.ZodUnion, value: unknown): unknown {
  return schema.options.find((each) => each instanceof z.ZodType && each.safeParse(value).success);
}

/** The text of a `session.json`: keys in one order, two spaces, a final newline; reads back to the same description. */
export function writeSessionFile(description: SessionDescription): string {
  return `${JSON.stringify(ordered(description, sessionSchema), null, 2)}\n`;
}
