import type { Finding } from "../ground/finding.ts";

/** True where a finding says that the recording, or a copy, is better left out. */
export function suggestLeavingOut(findings: readonly Finding[]): boolean {
  return findings.some(
    ({ severity, answers }) => severity === "refusal" && answers.some((answer) => "leftOut" in answer),
  );
}
