import type { Finding } from "../ground/finding.ts";
import type { FindingCode } from "../ground/finding-codes.ts";

/** Refusals whose remedy is to leave the recording out of the session. */
const leavingOut: ReadonlySet<FindingCode> = new Set(["no-takeoff", "no-landing", "broken-off", "recording-repeated"]);

/** True where a finding says that the recording, or a copy, is better left out. */
export function suggestLeavingOut(findings: readonly Finding[]): boolean {
  return findings.some(({ code, severity }) => severity === "refusal" && leavingOut.has(code));
}
