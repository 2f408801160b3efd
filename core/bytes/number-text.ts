export const decimalMarks = ["point", "comma"] as const;

export type DecimalMark = (typeof decimalMarks)[number];

/** What stands between groups of three digits; `space` is any blank, the no-break ones included. */
export type ThousandsMark = "none" | "point" | "comma" | "apostrophe" | "space";

const plainNumber: Readonly<Record<DecimalMark, RegExp>> = {
  point: /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/,
  comma: /^[+-]?(?:\d+(?:,\d*)?|,\d+)(?:[eE][+-]?\d+)?$/,
};

const groupMarks = { point: "\\.", comma: ",", apostrophe: "['\u2019]", space: "[ \u00a0\u2009\u202f]" } as const;

const groupedNumbers: Readonly<
  Record<DecimalMark, readonly { readonly mark: Exclude<ThousandsMark, "none">; readonly form: RegExp }[]>
> = {
  point: (["comma", "apostrophe", "space"] as const).map((mark) => ({ mark, form: groupedForm(mark, "\\.") })),
  comma: (["point", "apostrophe", "space"] as const).map((mark) => ({ mark, form: groupedForm(mark, ",") })),
};

/** Groups of exactly three digits behind one to three that do not start with 0; no exponent. */
function groupedForm(mark: keyof typeof groupMarks, decimal: string): RegExp {
  return new RegExp(`^[+-]?[1-9]\\d{0,2}(?:${groupMarks[mark]}\\d{3})+(?:${decimal}\\d*)?$`);
}

const unicodeMinus = "\u2212";

/**
 * The number written in a cell, or NaN. Blanks around it do not matter; a number too large for a double is NaN, because
 * a recording holds none. Equal to `Number()` on the same text with a decimal point and without thousands marks.
 */
export function parseNumberText(cell: string, decimalMark: DecimalMark, thousandsMark: ThousandsMark = "none"): number {
  const text = withAsciiMinus(cell);
  let value = Number.NaN;
  if (plainNumber[decimalMark].test(text)) value = Number(decimalMark === "comma" ? text.replace(",", ".") : text);
  else if (thousandsMark !== "none" && thousandsMarkIn(text, decimalMark) === thousandsMark) {
    const [whole = "", decimals = ""] = text.split(decimalMark === "comma" ? "," : ".");
    value = Number(`${whole.replace(/[^\d+-]/g, "")}.${decimals}`);
  }
  return Number.isFinite(value) ? value : Number.NaN;
}

/** The thousands mark of a cell that is a number only with one; undefined for every other cell. */
export function thousandsMarkIn(cell: string, decimalMark: DecimalMark): Exclude<ThousandsMark, "none"> | undefined {
  const text = withAsciiMinus(cell);
  if (!/\d[^\d]\d{3}/.test(text)) return undefined;
  return groupedNumbers[decimalMark].find(({ form }) => form.test(text))?.mark;
}

/**
 * Which decimal mark a cell proves: "0.5" and "1,234.5" a point, "1.234,5" a comma. "1.234" proves neither and is
 * `unclear`: 1.234 or 1234. Undefined for a cell that reads the same either way, or is no number.
 */
export function decimalMarkProvedBy(cell: string): DecimalMark | "unclear" | undefined {
  const point = parseAnyGroups(cell, "point");
  const comma = parseAnyGroups(cell, "comma");
  if (Number.isNaN(point)) return Number.isNaN(comma) ? undefined : "comma";
  if (Number.isNaN(comma)) return "point";
  return point === comma ? undefined : "unclear";
}

function parseAnyGroups(cell: string, decimalMark: DecimalMark): number {
  return parseNumberText(cell, decimalMark, thousandsMarkIn(cell, decimalMark) ?? "none");
}

function withAsciiMinus(cell: string): string {
  const trimmed = cell.trim();
  return trimmed.startsWith(unicodeMinus) ? `-${trimmed.slice(1)}` : trimmed;
}

const missingMarks = new Set(["", "nan", "na", "n/a", "#n/a", "null", "none", "-", "--", "?", "inf", "+inf", "-inf"]);

/** True for an empty cell and for the usual words for "no value here". */
export function isMissing(cell: string): boolean {
  return missingMarks.has(cell.trim().toLowerCase());
}
