import type { MeasureFindings } from "../../ground/findings/measures-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/measures`. */
export const findingsOfMeasure: FindingSentences<MeasureFindings> = {};
