import type { FindingFigures } from "../../ground/finding.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { findingsOfBytes } from "./findings-of-bytes.ts";
import { findingsOfEvents } from "./findings-of-events.ts";
import { findingsOfMeasure } from "./findings-of-measures.ts";
import { findingsOfRecording } from "./findings-of-recording.ts";
import { findingsOfSession } from "./findings-of-session.ts";
import { findingsOfSides } from "./findings-of-sides.ts";
import { findingsOfStated } from "./findings-of-stated.ts";
import { findingsOfTrial } from "./findings-of-trial.ts";
import { findingsOfWeight } from "./findings-of-weight.ts";

/** What is said of each kind of finding. */
export const findings: FindingSentences<FindingFigures> = {
  ...findingsOfBytes,
  ...findingsOfRecording,
  ...findingsOfStated,
  ...findingsOfTrial,
  ...findingsOfEvents,
  ...findingsOfWeight,
  ...findingsOfMeasure,
  ...findingsOfSides,
  ...findingsOfSession,
  prose: ({ message, action }) => ({ message, action }),
};
