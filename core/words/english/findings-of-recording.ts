import type { RecordingFindings } from "../../ground/findings/recording-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { findingsOfColumns } from "./findings-of-columns.ts";
import { findingsOfPlatforms } from "./findings-of-platforms.ts";
import { findingsOfTime } from "./findings-of-time.ts";
import { findingsOfUnits } from "./findings-of-units.ts";

/** What is said of the findings of `core/recording`. */
export const findingsOfRecording: FindingSentences<RecordingFindings> = {
  ...findingsOfColumns,
  ...findingsOfUnits,
  ...findingsOfTime,
  ...findingsOfPlatforms,
};
