import {
  eastAsian,
  foldWord,
  footPartWords,
  forceWords,
  indexWords,
  leftWords,
  otherWords,
  plateWords,
  rightWords,
  sidePairs,
  timeWords,
  totalWords,
  verticalWords,
} from "./column-words.ts";
import { forceUnitOf, isOtherQuantity, isVoltage } from "./force-units.ts";
import { timeUnitOf } from "./time-units.ts";

/**
 * What a column's own name and unit say it is. `unknown`: nothing; `other`: surely neither time nor vertical force;
 * `contradictory`: the name says force or a side, the unit another quantity.
 */
type ColumnKind = "time" | "index" | "left" | "right" | "total" | "force" | "other" | "contradictory" | "unknown";

/** A column's name, taken apart. */
export interface ColumnHint {
  /** As written in the file, unit included. */
  readonly written: string;
  /** The name without its unit. */
  readonly bare: string;
  /** As written; "" where the file is silent. */
  readonly unit: string;
  readonly kind: ColumnKind;
  /** True when the name says that this is the vertical force. */
  readonly isVertical: boolean;
  /** True where the side is known only beside another column's name ("G" beside "D"). */
  readonly isFromPair: boolean;
  /** The part of the foot that stands on a plate of its own ("heel"); "" where the name says none. */
  readonly footPart: string;
}

/** Reads the names of all columns: "left (N)", "Kraft links [N]", "FzRight_kN", "Temps (ms)". */
export function readColumnHints(names: readonly string[], units: readonly string[]): ColumnHint[] {
  const hints = names.map((name, index) => readColumnHint(name, units[index] ?? ""));
  const isUndecided = ({ kind }: ColumnHint): boolean => kind === "unknown" || kind === "force";
  for (const [left, right] of sidePairs) {
    const holding = (word: string, side: "left" | "right"): number[] =>
      hints.flatMap((hint, index) =>
        (isUndecided(hint) || hint.kind === side) && holdsSide(hint.bare, word) ? [index] : [],
      );
    const lefts = holding(left, "left");
    const rights = holding(right, "right");
    const undecided = [...lefts, ...rights].filter((index) => isUndecided(hints[index]!));
    if (lefts.length === 0 || lefts.length !== rights.length || lefts.some((index) => rights.includes(index))) continue;
    for (const index of undecided) {
      hints[index] = { ...hints[index]!, kind: lefts.includes(index) ? "left" : "right", isFromPair: true };
    }
  }
  return hints;
}

/** "Plate D" beside "Plate E" are letters of plates, not droite and esquerda. */
function holdsSide(bare: string, word: string): boolean {
  const parts = wordsOf(bare);
  return parts.includes(word) && (word.length > 1 || !parts.some((part) => plateWords.has(part)));
}

/** @param unitBelow the unit from a row of units, "" where there is none. */
function readColumnHint(written: string, unitBelow: string): ColumnHint {
  const { bare, unit: unitInName } = splitUnit(written);
  const unit = stripBrackets(unitBelow) || unitInName;
  const parts = wordsOf(bare);
  return {
    written: written.trim(),
    bare,
    unit,
    kind: kindOf(parts, bare, unit),
    isVertical: parts.some((part) => verticalWords.has(part)) || eastAsian.vertical.test(bare),
    isFromPair: false,
    footPart: parts.find((part) => footPartWords.has(part)) ?? "",
  };
}

function kindOf(parts: readonly string[], bare: string, unit: string): ColumnKind {
  const has = (set: ReadonlySet<string>): boolean => parts.some((part) => set.has(part));
  const isForce = forceUnitOf(unit) !== undefined || isVoltage(unit);
  const saysForce = has(forceWords) || eastAsian.force.test(bare);
  const saysTotal = has(totalWords) || eastAsian.total.test(bare);
  const isLeft = has(leftWords) || eastAsian.left.test(bare);
  const isRight = has(rightWords) || eastAsian.right.test(bare);
  if (has(otherWords) || eastAsian.other.test(bare)) return "other";
  if (isOtherQuantity(unit)) return isLeft || isRight || saysTotal || saysForce ? "contradictory" : "other";
  const saysTime = has(timeWords) || eastAsian.time.test(bare);
  if (timeUnitOf(unit) !== undefined || (saysTime && !saysForce && !isForce)) return "time";
  if (isLeft && isRight) return saysTotal ? "total" : "other";
  if (saysTotal) return "total";
  if (isLeft) return "left";
  if (isRight) return "right";
  if (has(indexWords) && !isForce) return "index";
  return saysForce || isForce ? "force" : "unknown";
}

/**
 * A unit stands in brackets (at the end, or elsewhere where it is one of force or time), behind a slash or comma, or as
 * a last word that is a unit of force or time, case and all. A side in brackets ("Fz (L)") belongs to the name.
 */
function splitUnit(written: string): { readonly bare: string; readonly unit: string } {
  const text = written.trim();
  const bracketed = /^(.*?)\s*[([]\s*([^()[\]]*?)\s*[)\]]\s*$/.exec(text) ?? /^(.*?)\s*（\s*(.*?)\s*）\s*$/.exec(text);
  if (bracketed !== null && !isSide(bracketed[2]!)) return { bare: bracketed[1]!.trim(), unit: bracketed[2]! };
  for (const [inBrackets, unit = ""] of text.matchAll(/[([]\s*([^()[\]]*?)\s*[)\]]/g)) {
    const isUnit = forceUnitOf(unit) !== undefined || timeUnitOf(unit) !== undefined;
    if (isUnit) return { bare: text.replace(inBrackets, " ").replace(/\s+/g, " ").trim(), unit };
  }
  const lastWord = /^(.*?)[\s_/,.-]+(?:in\s+|en\s+)?(N|kN|kgf|lbf|%?BW|N\/kg|V|mV|s|ms|µs|μs|us)$/.exec(text);
  if (lastWord !== null) return { bare: lastWord[1]!.trim(), unit: lastWord[2]! };
  return { bare: text, unit: "" };
}

function isSide(bracketed: string): boolean {
  const word = foldWord(bracketed);
  return leftWords.has(word) || rightWords.has(word) || /^(?:sx|dx|li|re)$/.test(word);
}

function stripBrackets(unit: string): string {
  return unit.trim().replace(/^[([]\s*|\s*[)\]]$/g, "");
}

/** Folded words; capitals inside a word, digits behind one and letters behind digits begin a new word. */
function wordsOf(name: string): string[] {
  return foldWord(
    name
      .replace(/(\p{Ll}|\d)(\p{Lu})/gu, "$1 $2")
      .replace(/(\p{L})(\d)/gu, "$1 $2")
      .replace(/(\d)(\p{L})/gu, "$1 $2"),
  )
    .split(/[^\p{L}\d]+/u)
    .filter((part) => part !== "")
    .flatMap(takeApart);
}

const longSides = [...leftWords, ...rightWords].filter((word) => word.length >= 4);
const joinedWords: ReadonlySet<string> = new Set([...forceWords, ...plateWords, "foot", "leg", "bein", "fuss", "pied"]);

/** "leftfz" and "kraftlinks" are two words each. */
function takeApart(word: string): readonly string[] {
  for (const side of longSides) {
    if (word.length <= side.length) continue;
    const [front, back] = [word.slice(0, -side.length), word.slice(side.length)];
    if (word.startsWith(side) && joinedWords.has(back)) return [side, back];
    if (word.endsWith(side) && joinedWords.has(front)) return [front, side];
  }
  return [word];
}
