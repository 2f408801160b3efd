import type { Limb } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import { eastAsian, foldWord, leftWords, rightWords, totalWords } from "./column-words.ts";

/** The limb or limbs a text names, in any of the languages of column names. */
export function limbIn(text: string): Limb | undefined {
  const parts = foldWord(text).split(/[^\p{L}]+/u);
  const isLeft = parts.some((part) => leftWords.has(part)) || eastAsian.left.test(text);
  const isRight = parts.some((part) => rightWords.has(part)) || eastAsian.right.test(text);
  const isBoth = parts.some((part) => totalWords.has(part) || part === "two" || part === "double" || part === "zwei");
  if (isBoth || (isLeft && isRight)) return "both";
  return isLeft ? "left" : isRight ? "right" : undefined;
}

const testWords: readonly (readonly [TestKind, RegExp])[] = [
  [
    "countermovementJump",
    /counter[ -]?movement|\bcmj\b|contre[ -]?mouvement|contra[ -]?movi|contro[ -]?movi|gegenbewegung/,
  ],
  ["squatJump", /squat[ -]?jump|\bsj\b/],
  ["dropLanding", /drop[ -]?landing|depth[ -]?landing/],
  ["dropJump", /drop[ -]?jump|\bdj\b|depth[ -]?jump|tiefsprung|niedersprung|contrebas/],
  ["repeatedHops", /\bhops?\b|\bhopping\b|\brebounds?\b/],
];

/** The test a value names, where it names one alone. */
export function testIn(text: string): TestKind | undefined {
  const folded = foldWord(text);
  const found = testWords.filter(([, pattern]) => pattern.test(folded));
  return found.length === 1 ? found[0]![0] : undefined;
}
