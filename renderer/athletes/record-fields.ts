import { bodyParts } from "../../core/stated/body-parts.ts";
import type { WrittenKind, WrittenRecord } from "../../electron/boundary/record-requests.ts";
import { words } from "../words/words.ts";

const prose = words.screens.recordFields;

/** One field of a form about a record. */
export interface RecordField {
  readonly name: string;
  readonly label: string;
  readonly type: "text" | "date" | "number" | "long" | "choice";
  readonly required?: true;
  /** Of a date: nobody may know it, which is said by a choice of its own. */
  readonly orUnknown?: true;
  /** Of a choice: what is kept, and what is shown. */
  readonly options?: readonly (readonly [value: string, label: string])[];
  /** Of a number: the least and the most that can be meant, and how many of what is written make one of what is kept. */
  readonly range?: readonly [number, number];
  readonly scale?: number;
  readonly wide?: true;
  /** Of a choice between yes and no: kept as true and false. */
  readonly isYesNo?: true;
  /** Beside the field while a record that is changed does not state it. */
  readonly whileNotStated?: string;
}

const sides = [
  ["left", prose.left],
  ["right", prose.right],
] as const;

/** Which part of the body, and whether its side counts as the involved one, of injuries and operations alike. */
const involvement: readonly RecordField[] = [
  {
    name: "bodyPart",
    label: prose.bodyPart,
    type: "choice",
    required: true,
    options: bodyParts.map((part) => [part, part] as const),
    whileNotStated: prose.bodyPartNotStated,
  },
  {
    name: "involved",
    label: prose.makesItsSideInvolved,
    type: "choice",
    required: true,
    isYesNo: true,
    options: [
      ["yes", prose.yes],
      ["no", prose.noCautionOnly],
    ],
    whileNotStated: prose.involvedNotStated,
  },
  { name: "involvedFrom", label: prose.involvedFrom, type: "date" },
  { name: "until", label: prose.until, type: "date" },
];

/** The fields of each form, in order. */
export const recordFields: Readonly<Record<WrittenKind, readonly RecordField[]>> = {
  athletes: [
    { name: "code", label: prose.code, type: "text", required: true },
    { name: "name", label: prose.nameIfWanted, type: "text" },
    {
      name: "sex",
      label: prose.sexIfWanted,
      type: "choice",
      options: [
        ["female", prose.female],
        ["male", prose.male],
      ],
    },
    { name: "birthYear", label: prose.yearOfBirth, type: "number", range: [1900, 2100] },
    { name: "heightMetres", label: prose.height, type: "number", range: [50, 272], scale: 100 },
    { name: "sport", label: prose.sport, type: "text" },
    { name: "level", label: prose.level, type: "text" },
    { name: "dominantSide", label: prose.dominantSide, type: "choice", options: sides },
    { name: "nobodyInjured", label: prose.nobodyInjured, type: "date" },
    { name: "note", label: prose.note, type: "long", wide: true },
  ],
  injuries: [
    { name: "side", label: prose.side, type: "choice", options: sides, required: true },
    { name: "structure", label: prose.whatIsInjured, type: "text", required: true, wide: true },
    { name: "date", label: prose.dateOfInjury, type: "date", required: true },
    ...involvement,
    { name: "restrictions", label: prose.restrictions, type: "text", wide: true },
    { name: "note", label: prose.note, type: "long", wide: true },
  ],
  operations: [
    { name: "side", label: prose.side, type: "choice", options: sides, required: true },
    { name: "procedure", label: prose.operation, type: "text", required: true, wide: true },
    { name: "graft", label: prose.graft, type: "text" },
    { name: "date", label: prose.dateOfOperation, type: "date", required: true, orUnknown: true },
    {
      name: "repaired",
      label: prose.repaired,
      type: "choice",
      required: true,
      options: [
        ["yes", prose.yes],
        ["no", prose.no],
        ["not known", prose.repairNotKnown],
      ],
    },
    ...involvement,
    { name: "restrictions", label: prose.surgeonsRestrictions, type: "text", wide: true },
    { name: "note", label: prose.note, type: "long", wide: true },
  ],
  consents: [
    { name: "reader", label: prose.reader, type: "text", required: true },
    { name: "sheet", label: prose.sheets, type: "text", required: true },
    {
      name: "given",
      label: prose.consent,
      type: "choice",
      required: true,
      isYesNo: true,
      options: [
        ["yes", prose.given],
        ["no", prose.notGiven],
      ],
    },
    { name: "date", label: prose.date, type: "date", required: true },
    { name: "recordedBy", label: prose.recordedBy, type: "text" },
  ],
};

/** What a form holds, as written; "" for what nobody stated. */
export type WrittenFields = Readonly<Record<string, string>>;

/** In the place of a date that nobody knows; the record then has none. */
export const unknownDate = "not known";

/** A record as its form shows it; one that is there without a date says that nobody knows it. */
export function writtenFields(kind: WrittenKind, content: object): WrittenFields {
  const known = content as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    recordFields[kind].map(({ name, scale, orUnknown }) => {
      const value = known[name];
      if (value === undefined) return [name, orUnknown && Object.keys(content).length > 0 ? unknownDate : ""];
      if (typeof value === "boolean") return [name, value ? "yes" : "no"];
      return [name, typeof value === "number" ? String(Number((value * (scale ?? 1)).toFixed(6))) : String(value)];
    }),
  );
}

/** What is written, as the record keeps it; a sentence where it cannot be meant. What the form does not show stays. */
export function contentFrom(
  kind: WrittenKind,
  written: WrittenFields,
  before: object,
): { readonly content: WrittenRecord["content"] } | { readonly problem: string } {
  const content: Record<string, unknown> = { ...before };
  for (const field of recordFields[kind]) {
    const text = (written[field.name] ?? "").trim();
    delete content[field.name];
    if (field.orUnknown && text === unknownDate) continue;
    if (text === "") {
      if (field.required) return { problem: missingWords(field) };
      continue;
    }
    const value = valueIn(field, text);
    if (value === undefined) {
      const [least = 0, most = 0] = field.range ?? [];
      return { problem: prose.isNumber(field.label, least, most) };
    }
    content[field.name] = value;
  }
  const { date, involvedFrom, until } = content;
  const from = typeof involvedFrom === "string" ? involvedFrom : date;
  if (typeof until === "string" && typeof from === "string" && until < from) {
    return { problem: prose.endsBeforeItBegins };
  }
  // Its parts were made from the fields of this kind; the host checks them against the record's own schema.
  return { content: content as WrittenRecord["content"] };
}

function missingWords({ label, orUnknown }: RecordField): string {
  return orUnknown ? prose.missingOrNotKnown(label) : prose.missing(label);
}

function valueIn(
  { isYesNo, type, range, scale = 1 }: RecordField,
  text: string,
): string | number | boolean | undefined {
  if (isYesNo) return text === "yes";
  if (type !== "number") return text;
  const value = Number(text.replace(",", "."));
  const [least, most] = range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return value >= least && value <= most ? value / scale : undefined;
}
