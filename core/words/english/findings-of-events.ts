import type { EventsFindings } from "../../ground/findings/events-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/events`. */
export const findingsOfEvents: FindingSentences<EventsFindings> = {};
