import type { StatedFindings } from "../../ground/findings/stated-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/stated`. */
export const findingsOfStated: FindingSentences<StatedFindings> = {};
