import type { SessionFindings } from "../../ground/findings/session-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

/** What is said of the findings of `core/session`. */
export const findingsOfSession: FindingSentences<SessionFindings> = {
  "mass-changed": ({ massKg, earlierKg, earlierFrom, earlierDate, days }) => {
    const change = massKg / earlierKg - 1;
    return {
      message: `Body mass is ${massKg.toFixed(1)} kg, ${Math.abs(100 * change).toFixed(1)} % ${change < 0 ? "below" : "above"} the ${earlierKg.toFixed(1)} kg ${earlierFrom} ${days} days before (${earlierDate}).`,
      action:
        "Ask whether these are this athlete's recordings and whether the mass changed so much; check force unit and plates.",
    };
  },
};
