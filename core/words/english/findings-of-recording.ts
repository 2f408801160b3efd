import type { RecordingFindings } from "../../ground/findings/recording-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/recording`. */
export const findingsOfRecording: FindingSentences<RecordingFindings> = {};
