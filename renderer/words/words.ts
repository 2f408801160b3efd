import { english } from "../../core/words/english.ts";
import type { Language } from "../../core/words/language.ts";

const languages: readonly Language[] = [english];

/** The one the page is written in (its `lang`), English where that is none the program speaks. */
function languageOfPage(): Language {
  const tag = typeof document === "undefined" ? english.tag : document.documentElement.lang;
  return languages.find((each) => each.tag === tag) ?? english;
}

/** The language of the screens; one for as long as a page is open. */
export const words: Language = languageOfPage();
