import { type Finding, finding } from "../finding.ts";
import type { TestKind } from "../test-kind.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";

/** Why a recording holds nothing to analyse. */
export function noAttempt(prepared: PreparedRecording, test: TestKind | undefined): readonly Finding[] {
  const { segments, total, brokenOff } = prepared;
  const seconds = (total.force.length / total.rateHz).toFixed(1);
  if (segments.steadyLoad === 0) {
    return [
      finding(
        "no-quiet-standing",
        "refusal",
        `Nobody stands still on the plate in these ${seconds} s of recording.`,
        "Check the force unit and the columns; record two seconds of quiet standing before the jump.",
      ),
    ];
  }
  if (test === "dropLanding") {
    return [
      finding(
        "no-landing",
        "refusal",
        `Nobody lands on the empty plate in these ${seconds} s of recording.`,
        "Start the recording while the plate is empty, or leave this recording out.",
      ),
    ];
  }
  if (brokenOff.length > 0) return brokenOff.map((span) => brokenOffFinding(span, total.rateHz, "refusal"));
  return [
    finding(
      "no-takeoff",
      "refusal",
      `The plate is never left after a push in these ${seconds} s of recording, so there is no jump.`,
      "Record the jump again, or leave this recording out.",
    ),
  ];
}

/** Says that a movement never left the plate. */
export function brokenOffFinding(span: SampleSpan, rateHz: number, severity: "note" | "refusal"): Finding {
  const from = (span.start / rateHz).toFixed(2);
  const to = (span.end / rateHz).toFixed(2);
  return finding(
    "broken-off",
    severity,
    `A movement from ${from} s to ${to} s dips and rises but never leaves the plate: it is not counted as a jump.`,
    severity === "refusal"
      ? "Record the jump again, or leave this recording out."
      : "Nothing needs to be done if the athlete broke off.",
    { where: `${from} s to ${to} s` },
  );
}
