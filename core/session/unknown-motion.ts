import type { JumpMotion } from "../events/jump-events.ts";
import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, proseFinding, type Severity } from "../ground/finding.ts";
import { startsFromStanding, type TestKind } from "../ground/test-kind.ts";
import type { JumpCut } from "../trial/cut-trials.ts";

/** A trial whose weight or movement the recording does not tell in full. */
export interface UnknownMotion {
  readonly test: TestKind;
  readonly cut: JumpCut;
  /** True when the other foot carried load on its own plate while a single-leg trial was weighed. */
  readonly otherFootWeighed: boolean;
  readonly rateHz: number;
  /** Why the session's other trials may not tell the weight, a clause that follows "because". */
  readonly notPooled?: string;
}

/** Why weight, the first movement or velocity is unknown; what is missing for that reason is named by the caller. */
export function unknownMotion(trial: UnknownMotion, { motion, events, hops }: JumpMotion): Finding | undefined {
  if (Number.isNaN(motion.weightNewtons)) return weightUnknown(trial, "warning");
  if (hops !== undefined) return undefined;
  if (startsFromStanding(trial.test) && events.onset === undefined) return beganMoving(trial);
  return knowsVelocity(motion) ? undefined : velocityUnknown(trial);
}

const needsNoWeight = "only what needs no body weight was measured";

/** Says that nothing tells a trial's weight: a refusal where nothing is left without it. */
export function weightUnknown(
  { test, cut, otherFootWeighed, rateHz, notPooled }: UnknownMotion,
  severity: Extract<Severity, "warning" | "refusal">,
): Finding {
  const cost = severity === "refusal" ? "so body weight is unknown" : `so ${needsNoWeight}`;
  const where = secondsOf(cut.flight.end, rateHz);
  if (otherFootWeighed) {
    return proseFinding(
      "other-foot-touching",
      severity,
      `The other foot carries load in the standing after the landing at ${where}, and ${notPooled === undefined ? "no other trial of the session bears that weight out" : `no other trial may bear that weight out, because ${notPooled}`}, ${cost}.`,
      "Keep the other foot off its plate until the end, or give the body mass (--mass).",
      { where },
    );
  }
  if (startsFromStanding(test)) {
    const until = secondsOf(cut.flight.start, rateHz);
    return proseFinding(
      "starts-moving",
      severity,
      `Nobody stands still before the jump at ${until}${cut.landed ? " or long enough after its landing" : ""}, ${cost}.`,
      "Record two seconds of quiet standing before the jump, or give the body mass (--mass).",
      { where: `0.00 s to ${until}` },
    );
  }
  const landed = cut.landed ? `Nobody stands still after the landing at ${where}` : "No landing on the plate follows";
  return proseFinding(
    cut.landed ? "no-quiet-standing" : "landing-off-plate",
    severity,
    `${landed}, and ${notPooled === undefined ? "no other trial of the session tells the body weight" : `no other trial may tell the body weight, because ${notPooled}`}, ${cost}.`,
    "Record two seconds of quiet standing after the landing, or give the body mass (--mass).",
    { where },
  );
}

/** A jump from standing whose first movement is not in the recording. */
function beganMoving({ cut, rateHz }: UnknownMotion): Finding {
  const until = secondsOf(cut.flight.start, rateHz);
  return proseFinding(
    "starts-moving",
    "warning",
    `Nobody stands still before the jump at ${until}: the recording starts in mid-movement, so nothing is counted from the first movement on.`,
    "Start the recording two seconds before the jump.",
    { where: `0.00 s to ${until}` },
  );
}

/** A drop whose velocity nothing tells. */
function velocityUnknown({ cut, rateHz }: UnknownMotion): Finding {
  const where = secondsOf(cut.flight.end, rateHz);
  return cut.landed
    ? proseFinding(
        "no-quiet-standing",
        "warning",
        `Nobody stands still after the landing at ${where}, so its velocity is unknown.`,
        "Have the athlete stand still for two seconds after the next landing.",
        { where },
      )
    : proseFinding(
        "landing-off-plate",
        "warning",
        `No landing on the plate follows the take-off at ${secondsOf(cut.flight.start, rateHz)}, and no quiet standing gives a velocity.`,
        "Repeat the jump with a landing on the plate, and stand still after it.",
        { where },
      );
}

function secondsOf(sample: number, rateHz: number): string {
  return `${(sample / rateHz).toFixed(2)} s`;
}
