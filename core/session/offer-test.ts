import { detectTrial } from "../events/detect-trial.ts";
import { velocityAt } from "../events/kinematics.ts";
import { weighTrial } from "../events/weigh-trial.ts";
import type { NotOffered, RecognisedTest } from "../ground/recognised-test.ts";
import { startsFromStanding } from "../ground/test-kind.ts";
import { hasTrait } from "../ground/test-traits.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { meanOf } from "../trial/force-signal.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { flightBeyondPeople } from "../trial/recognise-test.ts";
import { testContradictions } from "../trial/test-contradictions.ts";

/** What a trace looks like, offered only where the checks that would refuse it as that test have been passed. */
export function offerTest(
  prepared: PreparedRecording,
  cut: JumpCut,
  recognised: RecognisedTest,
  settings: Settings,
): RecognisedTest | NotOffered {
  return (
    flightBeyondPeople(cut, prepared.total.rateHz, settings) ??
    contradicted(cut, recognised, settings) ??
    untold(cut) ??
    unlikeItsFlight(prepared, cut, recognised, settings) ??
    recognised
  );
}

function contradicted(cut: JumpCut, recognised: RecognisedTest, settings: Settings): NotOffered | undefined {
  const [against] = testContradictions(recognised.test, cut, recognised, settings);
  return against === undefined ? undefined : { against: { why: "refused", test: recognised.test } };
}

/** A last step off the plate looks like a jump where neither standing before it nor a landing tells. */
function untold({ kind, landed, quietBefore, quietEarlier }: JumpCut): NotOffered | undefined {
  if (kind === "landing" || landed || quietBefore.length > 0 || quietEarlier.length > 0) return undefined;
  return { against: { why: "walked across" } };
}

/** A push that does not make the flight after it, or whose events cannot be found, is another movement. */
function unlikeItsFlight(
  prepared: PreparedRecording,
  cut: JumpCut,
  { test }: RecognisedTest,
  settings: Settings,
): NotOffered | undefined {
  const { weighing, still } = weighTrial(prepared.total, cut, test, settings);
  if (weighing === undefined) return undefined;
  if (hasTrait(test, "contact")) return stepsAcross(prepared, cut, weighing.newtons);
  if (!startsFromStanding(test)) return undefined;
  const { newtons, deviation } = weighing;
  const weight = { newtons, deviation, ...(still === undefined ? {} : { still: still.window }) };
  const jump = detectTrial({ test, total: prepared.total, limbs: [], cut, weight, edits: [], settings });
  if ("missing" in jump) {
    const seconds = jump.atSample / prepared.total.rateHz;
    return { against: { why: "event missing", missing: jump.missing, seconds } };
  }
  const { takeoff, touchdown } = jump.events;
  if (takeoff === undefined || touchdown === undefined) return undefined;
  const flown = (settings.gravity * (touchdown - takeoff)) / prepared.total.rateHz / 2;
  const pushed = velocityAt(jump.motion, takeoff);
  if (Number.isNaN(pushed) || Math.abs(pushed - flown) <= settings.offeredSpeedFraction * flown) return undefined;
  return { against: { why: "push unlike flight", pushedMetresPerSecond: pushed, flownMetresPerSecond: flown } };
}

/** A contact that stops a fall and throws the body up carries more than body weight on average; a step carries less. */
function stepsAcross(
  { total }: PreparedRecording,
  { contact }: JumpCut,
  weightNewtons: number,
): NotOffered | undefined {
  const mean = meanOf(total.force, contact.start, contact.end);
  if (mean > weightNewtons) return undefined;
  return { against: { why: "step", meanNewtons: mean, weightNewtons } };
}
