import type { Undetected } from "./events/detection.ts";
import { type EventEdit, eventLabel } from "./events/event.ts";
import { type Finding, finding } from "./finding.ts";
import { type TestKind, testLabel } from "./test-kind.ts";
import type { JumpCut } from "./trial/cut-trials.ts";

/** Refuses a trial whose weight nothing tells. */
export function weightUnknown(test: TestKind, cut: JumpCut, otherFootWeighed: boolean, rateHz: number): Finding {
  if (test === "countermovementJump" || test === "squatJump") {
    const until = (cut.flight.start / rateHz).toFixed(2);
    return finding(
      "starts-moving",
      "refusal",
      `Nobody stands still before the jump at ${until} s, so body weight is unknown.`,
      "Record two seconds of quiet standing before the jump, or give the body mass (--mass).",
      { where: `0.00 s to ${until} s` },
    );
  }
  const where = `${(cut.flight.end / rateHz).toFixed(2)} s`;
  if (otherFootWeighed) {
    return finding(
      "other-foot-touching",
      "refusal",
      `The other foot carries load in the standing after the landing at ${where}, and no other trial of the session bears that weight out.`,
      "Keep the other foot off its plate until the end, or give the body mass (--mass).",
      { where },
    );
  }
  const landed = cut.landed ? `Nobody stands still after the landing at ${where}` : "No landing on the plate follows";
  return finding(
    cut.landed ? "no-quiet-standing" : "landing-off-plate",
    "refusal",
    `${landed}, and no other trial of the session tells the body weight.`,
    "Record two seconds of quiet standing after the landing, or give the body mass (--mass).",
    { where },
  );
}

/** Refuses a trial of which an event could not be found. */
export function undetectedFinding({ missing, atSample }: Undetected, test: TestKind, rateHz: number): Finding {
  const where = `${(atSample / rateHz).toFixed(2)} s`;
  if (missing === "onset") {
    return finding(
      "starts-moving",
      "refusal",
      "The recording starts in mid-movement: force never was at body weight before the movement.",
      "Start the recording two seconds before the jump.",
      { where },
    );
  }
  if (missing === "landing") {
    return finding(
      "landing-off-plate",
      "refusal",
      `No landing on the plate follows the take-off at ${where}, and no quiet standing gives a velocity.`,
      "Repeat the jump with a landing on the plate, and stand still after it.",
      { where },
    );
  }
  return finding(
    "event-not-found",
    "refusal",
    `No ${missing} is found near ${where}.`,
    `Check that this trial is what it is called: ${testLabel(test)}.`,
    { where },
  );
}

/** Says which events a person has moved. */
export function movedFindings(edits: readonly EventEdit[]): readonly Finding[] {
  return edits.map(({ name, contactIndex, time }) =>
    finding(
      "event-moved",
      "note",
      `The ${eventLabel(name)}${contactIndex === undefined ? "" : ` of contact ${contactIndex}`} was moved by hand to ${time.toFixed(4)} s.`,
      "Reset it to the detected place if this was not meant.",
      { where: `${time.toFixed(4)} s` },
    ),
  );
}
