import type { Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import { limbIn, testIn } from "../recording/named-in-words.ts";

/** What the name of a file or folder may tell about the recordings in it. */
export interface NameOffers {
  readonly test?: TestKind;
  readonly limb?: Limb;
  readonly dropHeightMetres?: number;
  readonly leadingLeg?: Side;
  /** ISO. */
  readonly date?: string;
}

/** No setting: it only limits what is offered to a person, who decides. */
const highestBoxMetres = 2;
const lowestBoxMetres = 0.05;

/** Reads one name, without its ending. What it says twice in different ways is not offered. */
export function nameOffers(name: string): NameOffers {
  const words = name
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replaceAll(/[_\s]+/g, " ")
    .trim();
  const { leadingLeg, rest } = leadIn(words);
  const parts = {
    test: testIn(rest),
    limb: limbIn(rest),
    dropHeightMetres: boxIn(rest),
    leadingLeg,
    date: dateIn(words),
  };
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
}

const lead = "(?:lead(?:s|ing)?|led|first)";
const side = "(left|right|l|r)";
const leadFirst = new RegExp(`\\b${lead}[ .-]*(?:leg[ .-]*)?${side}\\b`, "i");
const sideFirst = new RegExp(`\\b${side}[ .-]*(?:leg[ .-]*)?${lead}\\b`, "i");

/** The leg that steps off the box first; its word then says nothing about the limb that jumps. */
function leadIn(words: string): { readonly leadingLeg?: Side; readonly rest: string } {
  const found = leadFirst.exec(words) ?? sideFirst.exec(words);
  const [all, word] = found ?? [];
  if (all === undefined || word === undefined) return { rest: words };
  return { leadingLeg: word.toLowerCase().startsWith("l") ? "left" : "right", rest: words.replace(all, " ") };
}

const metresIn: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001 };

/** "30cm", "0.30 m", "box 30": a height, in metres; a bare number behind the word for a box counts centimetres. */
function boxIn(words: string): number | undefined {
  const withUnit = [...words.matchAll(/(?<![\d.,])(\d+(?:[.,]\d+)?)[ -]?(mm|cm|m)(?![\p{L}\d])/giu)].map(
    ([, number = "", unit = ""]) => Number(number.replace(",", ".")) * (metresIn[unit.toLowerCase()] ?? Number.NaN),
  );
  const behindBox = [...words.matchAll(/\b(?:box|kasten|caisse|cajon)[ -]?(\d{2,3})(?![\d.,]|[ -]?(?:mm|cm|m)\b)/gi)];
  const heights = [...withUnit, ...behindBox.map(([, number]) => Number(number) / 100)]
    .map((metres) => Math.round(metres * 1000) / 1000)
    .filter((metres) => metres >= lowestBoxMetres && metres <= highestBoxMetres);
  return new Set(heights).size === 1 ? heights[0] : undefined;
}

/** A date written year first, with or without separators; other orders can be read two ways. */
function dateIn(words: string): string | undefined {
  const dates = [...words.matchAll(/(?<!\d)(20\d\d)([-. ]?)(\d\d)\2(\d\d)(?!\d)/g)].flatMap(
    ([, year = "", , month = "", day = ""]) => {
      const isDate = Number(month) >= 1 && Number(month) <= 12 && Number(day) >= 1 && Number(day) <= 31;
      return isDate ? [`${year}-${month}-${day}`] : [];
    },
  );
  return new Set(dates).size === 1 ? dates[0] : undefined;
}
