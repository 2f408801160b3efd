import type { TestKind } from "./test-kind.ts";

/**
 * What names of files and folders and lines of a header call a test: of a text in lower case, without accents, nothing
 * but letters and single spaces. English, German, French, Spanish, Italian, Portuguese, as far as a word means one test
 * alone. The only list of such words.
 */
export const testWords: Readonly<Record<TestKind, RegExp>> = {
  countermovementJump: /counter ?movement|\bcmj\b|gegenbewegung|contre ?mouvement|contra ?movi|contro ?movi/,
  squatJump: /squat ?jump|\bsj\b|kniebeuge ?sprung/,
  dropJump: /drop ?jump|depth ?jump|\bdj\b|tief ?sprung|nieder ?sprung|contrebas/,
  repeatedHops: /\bhops?\b|\bhopping\b|\bhupfer\b|\brebounds?\b/,
  dropLanding: /drop ?landing|depth ?landing/,
};
