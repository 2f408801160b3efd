import { english } from "../../core/words/english.ts";
import type { Language } from "../../core/words/language.ts";

/** The language of the screens; one for as long as a page is open. */
export const words: Language = english;
