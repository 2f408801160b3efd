import type { Answer } from "../ground/answer.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, totalForce } from "./force-signal.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";
import { type SteadyLoad, steadyLoads } from "./steady-loads.ts";

/** A recording without an attempt may be left out of its session. */
const leavingOut: readonly Answer[] = [{ leftOut: true }];

/** Why a recording holds nothing to analyse. */
export function noAttempt(
  prepared: PreparedRecording,
  test: TestKind | undefined,
  settings: Settings,
): readonly Finding[] {
  const { segments, total, brokenOff } = prepared;
  const seconds = total.force.length / total.rateHz;
  if (segments.steadyLoad === 0) {
    // As recorded: where everything counts as empty, a mean of it was taken for the plates' zero.
    const recorded = totalForce(prepared.recording.plates.map(({ force }) => force));
    const light = lightLoad({ rateHz: total.rateHz, force: recorded }, settings);
    if (light !== undefined) return [lightFinding(light, settings)];
    return [finding("no-quiet-standing/recording", "refusal", { seconds })];
  }
  if (test !== undefined && testFacts(test).flights === "none") {
    return [finding("no-landing", "refusal", { seconds }, { answers: leavingOut })];
  }
  if (brokenOff.length > 0) return brokenOff.map((span) => brokenOffFinding(span, total.rateHz, "refusal"));
  const left = segments.empty.find(({ start }) => start > 0);
  if (left === undefined) return [finding("no-takeoff/never", "refusal", { seconds }, { answers: leavingOut })];
  const emptiesAt = left.start / total.rateHz;
  return [
    finding(
      "no-takeoff/step",
      "refusal",
      { seconds: emptiesAt, steadyNewtons: segments.steadyLoad },
      { place: { at: "time", seconds: emptiesAt, decimals: 2 }, answers: leavingOut },
    ),
  ];
}

/** Says that a movement never left the plate. */
export function brokenOffFinding(span: SampleSpan, rateHz: number, severity: "note" | "refusal"): Finding {
  const when = { fromSeconds: span.start / rateHz, toSeconds: span.end / rateHz };
  const place = { at: "span", ...when, decimals: 2 } as const;
  return severity === "refusal"
    ? finding("broken-off/only", severity, when, { place, answers: leavingOut })
    : finding("broken-off/before-jump", severity, when, { place });
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
  return finding(
    "weight-implausible/light",
    "refusal",
    { newtons, massKg: mass, leastNewtons: least, mostNewtons: most },
    { answers: [{ unit: "kN" }] },
  );
}
