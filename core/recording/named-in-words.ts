import type { Limb } from "../ground/limb.ts";
import { type TestKind, testFacts, testKinds } from "../ground/test-kind.ts";
import { testWords } from "../ground/test-words.ts";
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

/** The test a text names, where it names one alone; a name of a variant holds that of the kind it is a variant of. */
export function testIn(text: string): TestKind | undefined {
  const words = foldWord(text.replace(/([a-z])([A-Z])/g, "$1 $2")).replace(/[^\p{L}]+/gu, " ");
  const named = testKinds.filter((test) => testWords[test].test(words));
  const found = named.filter((test) => !named.some((other) => testFacts(other).variantOf === test));
  return found.length === 1 ? found[0] : undefined;
}
