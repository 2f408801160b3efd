import type { TrialFindings } from "../../ground/findings/trial-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/trial`. */
export const findingsOfTrial: FindingSentences<TrialFindings> = {};
