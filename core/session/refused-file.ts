import type { Finding } from "../ground/finding.ts";
import type { TrialResult } from "../result/trial-result.ts";

/** A file that gives no trial at all, as the one refused trial it is reported by. */
export function refusedFile(path: string, sha256: string, reason: Finding): TrialResult {
  return {
    file: path,
    sha256,
    trial: 1,
    status: "refused",
    plates: [],
    events: [],
    measures: [],
    findings: [reason],
    seen: false,
    edits: [],
  };
}
