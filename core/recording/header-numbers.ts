import type { DecimalMark } from "../bytes/number-text.ts";

/** A number with the words behind it: "1000 Hz" is 1000 and "Hz". */
interface Quantity {
  readonly number: number;
  readonly unit: string;
  /** True for "1.000" above a table with decimal points: one, or a thousand as others write it. */
  readonly mayBeThousands: boolean;
}

/** Reads the number a header value starts with; undefined where it starts with none. */
export function readQuantity(text: string, decimalMark: DecimalMark): Quantity | undefined {
  const found =
    /^([+-]?\d{1,3}(?:[ \u00a0\u202f'’]\d{3})+(?:[.,]\d+)?|[+-]?\d+(?:[.,]\d+)*(?:e[+-]?\d+)?)\s*(.*)$/iu.exec(
      text.trim(),
    );
  if (found === null) return undefined;
  const number = readHeaderNumber(found[1]!, decimalMark);
  if (!Number.isFinite(number)) return undefined;
  return {
    number,
    unit: found[2]!.trim().replace(/^[([]|[)\];,.]+$/g, ""),
    mayBeThousands: /^[1-9]\d{0,2}[.,]\d{3}$/.test(found[1]!) && number < 1000,
  };
}

/**
 * A number above the table: its mark is decimal where the table's is, groups thousands where it stands before exactly
 * three digits, and is decimal otherwise ("69,4" above numbers with points).
 */
function readHeaderNumber(text: string, decimalMark: DecimalMark): number {
  const plain = text.replace(/[ \u00a0\u202f'’]/g, "");
  const marks = plain.match(/[.,]/g) ?? [];
  const own = decimalMark === "comma" ? "," : ".";
  if (marks.length === 0) return Number(plain);
  const last = marks.at(-1)!;
  if (new Set(marks).size > 1) return Number(plain.replaceAll(marks[0]!, "").replace(last, "."));
  const isGrouped = /^[+-]?\d{1,3}(?:[.,]\d{3})+$/.test(plain) && (marks.length > 1 || last !== own);
  if (isGrouped) return Number(plain.replaceAll(last, ""));
  return marks.length > 1 ? Number.NaN : Number(plain.replace(last, "."));
}
