import { answers } from "./english/answers.ts";
import { findings } from "./english/findings.ts";
import { places } from "./english/places.ts";

/** Everything that is said in English, the language that is complete. */
export const english = { tag: "en", answers, findings, places };
