import { answers } from "./english/answers.ts";
import { events } from "./english/events.ts";
import { findings } from "./english/findings.ts";
import { limbs } from "./english/limbs.ts";
import { measures } from "./english/measures.ts";
import { places } from "./english/places.ts";
import { recognition } from "./english/recognition.ts";
import { screens } from "./english/screens.ts";
import { statuses } from "./english/statuses.ts";
import { tests } from "./english/tests.ts";

/** Everything that is said in English, the language that is complete. */
export const english = {
  tag: "en",
  answers,
  events,
  findings,
  limbs,
  measures,
  places,
  recognition,
  screens,
  statuses,
  tests,
};
