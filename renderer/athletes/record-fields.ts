import { bodyParts } from "../../core/stated/body-parts.ts";
import type { WrittenKind, WrittenRecord } from "../../electron/boundary/register-api.ts";

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
  ["left", "left"],
  ["right", "right"],
] as const;

/** Which part of the body, and whether its side counts as the involved one, of injuries and operations alike. */
const involvement: readonly RecordField[] = [
  {
    name: "bodyPart",
    label: "Body part",
    type: "choice",
    required: true,
    options: bodyParts.map((part) => [part, part] as const),
    whileNotStated: "Not stated in this record: it has been taken for the knee so far.",
  },
  {
    name: "involved",
    label: "Makes its side the involved one",
    type: "choice",
    required: true,
    isYesNo: true,
    options: [
      ["yes", "yes"],
      ["no", "no: a caution on that limb"],
    ],
    whileNotStated: "Not stated in this record: it has counted as involved so far.",
  },
  { name: "involvedFrom", label: "Involved from, if not from its date", type: "date" },
  { name: "until", label: "Until, once it is over", type: "date" },
];

/** The fields of each form, in order. */
export const recordFields: Readonly<Record<WrittenKind, readonly RecordField[]>> = {
  athletes: [
    { name: "code", label: "Code", type: "text", required: true },
    { name: "name", label: "Name, if wanted", type: "text" },
    {
      name: "sex",
      label: "Sex, if wanted",
      type: "choice",
      options: [
        ["female", "female"],
        ["male", "male"],
      ],
    },
    { name: "birthYear", label: "Year of birth", type: "number", range: [1900, 2100] },
    { name: "heightMetres", label: "Height, cm", type: "number", range: [50, 272], scale: 100 },
    { name: "sport", label: "Sport", type: "text" },
    { name: "level", label: "Level", type: "text" },
    { name: "dominantSide", label: "Dominant side", type: "choice", options: sides },
    { name: "nobodyInjured", label: "Stated that nobody is injured, on", type: "date" },
    { name: "note", label: "Note", type: "long", wide: true },
  ],
  injuries: [
    { name: "side", label: "Side", type: "choice", options: sides, required: true },
    { name: "structure", label: "What is injured", type: "text", required: true, wide: true },
    { name: "date", label: "Date of the injury", type: "date", required: true },
    ...involvement,
    { name: "restrictions", label: "Restrictions", type: "text", wide: true },
    { name: "note", label: "Note", type: "long", wide: true },
  ],
  operations: [
    { name: "side", label: "Side", type: "choice", options: sides, required: true },
    { name: "procedure", label: "Operation", type: "text", required: true, wide: true },
    { name: "graft", label: "Graft", type: "text" },
    { name: "date", label: "Date of the operation", type: "date", required: true, orUnknown: true },
    {
      name: "repaired",
      label: "Meniscus or cartilage repaired",
      type: "choice",
      required: true,
      options: [
        ["yes", "yes"],
        ["no", "no"],
        ["not known", "not known: the later weeks count"],
      ],
    },
    ...involvement,
    { name: "restrictions", label: "The surgeon's restrictions", type: "text", wide: true },
    { name: "note", label: "Note", type: "long", wide: true },
  ],
  consents: [
    { name: "reader", label: "Who may read (athlete, surgeon, coach …)", type: "text", required: true },
    { name: "sheet", label: "Which sheets", type: "text", required: true },
    {
      name: "given",
      label: "Consent",
      type: "choice",
      required: true,
      isYesNo: true,
      options: [
        ["yes", "given"],
        ["no", "not given or withdrawn"],
      ],
    },
    { name: "date", label: "Date", type: "date", required: true },
    { name: "recordedBy", label: "Recorded by", type: "text" },
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
      return { problem: `${field.label} is a number from ${least} to ${most}.` };
    }
    content[field.name] = value;
  }
  const { date, involvedFrom, until } = content;
  const from = typeof involvedFrom === "string" ? involvedFrom : date;
  if (typeof until === "string" && typeof from === "string" && until < from) {
    return { problem: "It ends before it begins: correct one of the dates." };
  }
  // Its parts were made from the fields of this kind; the host checks them against the record's own schema.
  return { content: content as WrittenRecord["content"] };
}

function missingWords({ label, orUnknown }: RecordField): string {
  return orUnknown ? `${label} is missing: enter it, or say that it is not known.` : `${label} is missing.`;
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
