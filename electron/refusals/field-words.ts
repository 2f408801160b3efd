import { type TestKind, testKinds } from "../../core/ground/test-kind.ts";
import { english } from "../../core/words/english.ts";
import { placeSeparator } from "./merge-fields.ts";

/** Names of fields whose own name says too little. */
const names: Readonly<Record<string, string>> = {
  involved: "involved side",
  massKg: "body mass",
  dropHeightMetres: "height of the box",
  heightMetres: "height",
  rateHz: "rate",
  resampleHz: "rate of the even time base",
  resample: "even time base",
  swapPlates: "exchange of left and right",
  plates: "feet on the plates",
  excluded: "exclusion",
  seen: "seen mark",
  stopped: "stop",
  given: "consent",
  binned: "place in the bin",
};

/** The unit a number is shown with. */
const units: Readonly<Record<string, string>> = {
  massKg: "kg",
  dropHeightMetres: "m",
  heightMetres: "m",
  rateHz: "Hz",
  resampleHz: "Hz",
};

/** "birthYear" in words: "birth year". Of a part of a field, both: "pain, during". */
export function fieldName(field: string): string {
  return field
    .split(placeSeparator)
    .map((part) => names[part] ?? part.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`))
    .join(", ");
}

/** The value of a field as a person reads it. */
export function fieldValueWords(field: string, value: unknown): string {
  if (value === undefined) return "not stated";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return units[field] === undefined ? String(value) : `${value} ${units[field]}`;
  if (typeof value === "string") return isTest(value) ? english.tests.label(value) : value;
  if (Array.isArray(value)) return value.map((each) => fieldValueWords("", each)).join("; ");
  return objectWords(value as Readonly<Record<string, unknown>>);
}

/** What is unique to an object in words: its reason, its name, or all of its parts. */
function objectWords(fields: Readonly<Record<string, unknown>>): string {
  const { reason, stage, name, code, column, foot } = fields;
  if (typeof reason === "string") return reason;
  if (typeof stage === "string" && typeof name === "string") return `${stage}: ${name}`;
  if (typeof code === "string") return typeof name === "string" ? `${name}, ${code}` : code;
  if (typeof column === "string" && typeof foot === "string") return `${foot} foot on “${column}”`;
  return Object.entries(fields)
    .map(([part, value]) => `${fieldName(part)} ${fieldValueWords(part, value)}`)
    .join(", ");
}

function isTest(text: string): text is TestKind {
  return (testKinds as readonly string[]).includes(text);
}
