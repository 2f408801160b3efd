import { type Finding, proseFinding } from "../ground/finding.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, totalForce } from "./force-signal.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";
import { type SteadyLoad, steadyLoads } from "./steady-loads.ts";

/** Why a recording holds nothing to analyse. */
export function noAttempt(
  prepared: PreparedRecording,
  test: TestKind | undefined,
  settings: Settings,
): readonly Finding[] {
  const { segments, total, brokenOff } = prepared;
  const seconds = (total.force.length / total.rateHz).toFixed(1);
  if (segments.steadyLoad === 0) {
    // As recorded: where everything counts as empty, a mean of it was taken for the plates' zero.
    const recorded = totalForce(prepared.recording.plates.map(({ force }) => force));
    const light = lightLoad({ rateHz: total.rateHz, force: recorded }, settings);
    if (light !== undefined) return [lightFinding(light, settings)];
    return [
      proseFinding(
        "no-quiet-standing",
        "refusal",
        `Nobody stands still on the plate in these ${seconds} s of recording.`,
        "Check the force unit and the columns; record two seconds of quiet standing before the jump.",
      ),
    ];
  }
  if (test !== undefined && testFacts(test).flights === "none") {
    return [
      proseFinding(
        "no-landing",
        "refusal",
        `Nobody lands on the empty plate in these ${seconds} s of recording.`,
        "Start the recording while the plate is empty, or leave this recording out.",
      ),
    ];
  }
  if (brokenOff.length > 0) return brokenOff.map((span) => brokenOffFinding(span, total.rateHz, "refusal"));
  const left = segments.empty.find(({ start }) => start > 0);
  const where = left === undefined ? "" : `${(left.start / total.rateHz).toFixed(2)} s`;
  return [
    proseFinding(
      "no-takeoff",
      "refusal",
      left === undefined
        ? `The plate is never left in these ${seconds} s of recording, so there is no jump.`
        : `The plate empties at ${where}, but not after a push that would throw the athlete up: beside the ${segments.steadyLoad.toFixed(0)} N of the steadiest load it looks like a step off the plate, not like a jump.`,
      "Record the jump again, with quiet standing before it, or leave this recording out.",
      { where },
    ),
  ];
}

/** Says that a movement never left the plate. */
export function brokenOffFinding(span: SampleSpan, rateHz: number, severity: "note" | "refusal"): Finding {
  const from = (span.start / rateHz).toFixed(2);
  const to = (span.end / rateHz).toFixed(2);
  return proseFinding(
    "broken-off",
    severity,
    `A movement from ${from} s to ${to} s dips and rises but never leaves the plate: it is not counted as a jump.`,
    severity === "refusal"
      ? "Record the jump again, or leave this recording out."
      : "Nothing needs to be done if the athlete broke off.",
    { where: `${from} s to ${to} s` },
  );
}

/** The longest steady load where none is an athlete's: newtons, or undefined where nothing comes and goes. */
function lightLoad(total: ForceSignal, settings: Settings): number | undefined {
  const smooth = runningMean(total.force, Math.max(2, Math.round(settings.quietBlockSeconds * total.rateHz)));
  const whole = { start: 0, end: total.force.length };
  const steady = steadyLoads(total, whole, { ...settings, emptyMinimumNewtons: 0 });
  const longest = steady.reduce<SteadyLoad | undefined>(
    (best, each) => (best === undefined || each.newtons > best.newtons ? each : best),
    undefined,
  );
  if (longest === undefined) return undefined;
  const least = smooth.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY);
  return longest.newtons - least > settings.lightLoadChangeFraction * longest.newtons ? longest.newtons : undefined;
}

function lightFinding(newtons: number, settings: Settings): Finding {
  const mass = newtons / settings.gravity;
  const least = settings.bodyMassMinimumKg * settings.gravity;
  const most = settings.bodyMassMaximumKg * settings.gravity;
  return proseFinding(
    "weight-implausible",
    "refusal",
    `The load at rest is ${newtons.toPrecision(2)}, which in newtons would be an athlete of ${mass.toPrecision(2)} kg; a person weighs ${least.toFixed(0)} to ${most.toFixed(0)} N. These figures are not newtons: kilonewtons, volts, or another scale.`,
    "Find the unit of the force columns and state it (--unit kN), or export the recording in newtons.",
  );
}
