import type { WeightFindings } from "../../ground/findings/weight-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/weight`. */
export const findingsOfWeight: FindingSentences<WeightFindings> = {};
