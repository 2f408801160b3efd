import type { JumpMotion } from "../events/jump-events.ts";
import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, finding, type Severity } from "../ground/finding.ts";
import type { Place } from "../ground/place.ts";
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

/** Says that nothing tells a trial's weight: a refusal where nothing is left without it. */
export function weightUnknown(
  { test, cut, otherFootWeighed, rateHz, notPooled }: UnknownMotion,
  severity: Extract<Severity, "warning" | "refusal">,
): Finding {
  const landingSeconds = cut.flight.end / rateHz;
  const costs = severity === "refusal" ? "everything" : "what needs weight";
  const place = { at: "time", seconds: landingSeconds, decimals: 2 } as const;
  const answers = [{ asks: "massKg" }] as const;
  const figures = { landingSeconds, costs, ...(notPooled === undefined ? {} : { notPooled }) } as const;
  if (otherFootWeighed) return finding("other-foot-touching/weight", severity, figures, { place, answers });
  if (startsFromStanding(test)) {
    const takeoffSeconds = cut.flight.start / rateHz;
    return finding(
      "starts-moving/weight",
      severity,
      { takeoffSeconds, landed: cut.landed, costs },
      { place: untilTakeoff(cut, rateHz), answers },
    );
  }
  return cut.landed
    ? finding("no-quiet-standing/weight", severity, figures, { place, answers })
    : finding("landing-off-plate/weight", severity, figures, { place, answers });
}

/** A jump from standing whose first movement is not in the recording. */
function beganMoving({ cut, rateHz }: UnknownMotion): Finding {
  const takeoffSeconds = cut.flight.start / rateHz;
  return finding("starts-moving/mid-movement", "warning", { takeoffSeconds }, { place: untilTakeoff(cut, rateHz) });
}

/** A drop whose velocity nothing tells. */
function velocityUnknown({ cut, rateHz }: UnknownMotion): Finding {
  const landingSeconds = cut.flight.end / rateHz;
  const place = { at: "time", seconds: landingSeconds, decimals: 2 } as const;
  return cut.landed
    ? finding("no-quiet-standing/velocity", "warning", { landingSeconds }, { place })
    : finding("landing-off-plate/velocity", "warning", { takeoffSeconds: cut.flight.start / rateHz }, { place });
}

function untilTakeoff(cut: JumpCut, rateHz: number): Place {
  return { at: "span", fromSeconds: 0, toSeconds: cut.flight.start / rateHz, decimals: 2 };
}
