import type { SidesFindings } from "../../ground/findings/sides-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/sides`. */
export const findingsOfSides: FindingSentences<SidesFindings> = {};
