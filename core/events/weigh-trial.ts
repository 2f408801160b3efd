import { type Finding, finding } from "../ground/finding.ts";
import { startsFromStanding, type TestKind, testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { heldStanding } from "./held-standing.ts";
import {
  balanceMomentum,
  type MomentumBalance,
  plateNoise,
  type Weighing,
  type WeightEstimate,
  weigh,
} from "./weigh.ts";
import { type QuietSide, weighingSecond } from "./weighing-second.ts";

/** Where a trial's quiet standing lies. */
export type QuietPlace = "before the jump" | "after the landing";

/** The weighing of one trial, with what is to be said about it. */
export interface TrialWeighing {
  /** Quiet standing that gives body weight; absent when nobody stood still. */
  readonly weighing?: Weighing;
  readonly place?: QuietPlace;
  /** Quiet standing in which mean velocity is zero; absent when nobody stood still next to the movement. */
  readonly still?: Weighing;
  /** Quiet standing after a jump that starts from standing, for the end mismatch. */
  readonly after?: Weighing;
  /** Momentum balance of both; absent where one is missing or they disagree. */
  readonly balance?: MomentumBalance;
  /** Says that something else carried a part of the athlete who stood before the jump, so that it weighs nobody. */
  readonly heldBefore?: Finding;
  readonly findings: readonly Finding[];
}

/**
 * Weighs the athlete (METHODS §2): jumps from standing before the dip, and by momentum balance where it is quiet after
 * the landing too, else after the landing alone; drop jumps, drop landings and hops after the landing, else where somebody stood on the plate earlier.
 */
export function weighTrial(total: ForceSignal, cut: JumpCut, test: TestKind, settings: Settings): TrialWeighing {
  if (startsFromStanding(test)) return weighStanding(total, cut, test, settings);
  const after = weighAfter(total, cut, settings.weighingShortSeconds, settings);
  const earlier = weighOver(total, [...cut.quietEarlier, ...cut.quietBefore], "before", settings);
  const { rateHz } = total;
  if (after !== undefined && (earlier === undefined || isSound(after, earlier, rateHz, settings))) {
    const place = "after the landing";
    return { weighing: after, place, still: after, findings: weighingFindings(after, test, rateHz, place, settings) };
  }
  if (earlier === undefined) return { findings: [] };
  const place = "before the jump";
  const findings = weighingFindings(earlier, test, rateHz, place, settings);
  // Standing before a drop is not joined to it: the athlete left the plate in between.
  return { weighing: earlier, place, ...(cut.kind === "standing" ? { still: earlier } : {}), findings };
}

/**
 * False for standing after a landing that is shorter than a weighing and disagrees with a known weight: the athlete
 * still moves there, so it tells neither weight nor zero velocity.
 */
export function isSound(after: Weighing, known: WeightEstimate, rateHz: number, settings: Settings): boolean {
  const seconds = (after.window.end - after.window.start) / rateHz;
  const agrees = Math.abs(after.newtons / known.newtons - 1) <= settings.weightToleranceSession;
  return agrees || seconds >= settings.weighingSeconds;
}

function weighStanding(total: ForceSignal, cut: JumpCut, test: TestKind, settings: Settings): TrialWeighing {
  const weighing = weighOver(total, cut.quietBefore, "before", settings);
  const after = weighAfter(total, cut, settings.quietSecondsAfter, settings);
  const held = after === undefined ? undefined : heldStanding(total, cut, test, weighing, after, settings);
  if (weighing === undefined || held !== undefined) {
    // As after a drop jump: what is known of the motion is counted back from there.
    if (after === undefined) return { findings: [] };
    const place = "after the landing";
    const findings = weighingFindings(after, test, total.rateHz, place, settings);
    return { weighing: after, place, still: after, ...(held === undefined ? {} : { heldBefore: held }), findings };
  }
  const { window } = weighing;
  const agrees =
    after !== undefined &&
    Math.abs(after.newtons / weighing.newtons - 1) <= settings.weightToleranceSession &&
    window.end - window.start >= settings.quietSecondsAfter * total.rateHz;
  const balance = agrees ? balanceMomentum(total.force, total.rateHz, weighing, after, settings) : undefined;
  // A squat jump starts from its hold, whichever stretch weighed the athlete.
  const hold =
    testFacts(test).start === "hold" ? weighOver(total, cut.quietBefore.slice(-1), "before", settings) : undefined;
  const place = "before the jump";
  return {
    weighing,
    place,
    still: hold ?? weighing,
    ...(after === undefined ? {} : { after }),
    ...(balance === undefined ? {} : { balance }),
    findings: weighingFindings(weighing, test, total.rateHz, place, settings),
  };
}

/**
 * The steadiest part of the quiet standing after the landing; undefined where it is shorter than wanted: a landing passes
 * through loads that stay the same for a moment, and nobody stands there.
 */
function weighAfter(
  total: ForceSignal,
  { quietAfter }: JumpCut,
  leastSeconds: number,
  settings: Settings,
): Weighing | undefined {
  if (quietAfter.end - quietAfter.start < leastSeconds * total.rateHz) return undefined;
  return weighOver(total, [quietAfter], "after", settings);
}

function weighOver(
  total: ForceSignal,
  quiet: readonly SampleSpan[],
  side: QuietSide,
  settings: Settings,
): Weighing | undefined {
  const { force, rateHz } = total;
  const stood = quiet.filter((span) => span.end > span.start);
  const second = weighingSecond(force, rateHz, stood, settings, side);
  if (second === undefined) return undefined;
  return weigh(force, rateHz, second, plateNoise(force, second.calm), settings);
}

function weighingFindings(
  weighing: Weighing,
  test: TestKind,
  rateHz: number,
  quiet: QuietPlace,
  settings: Settings,
): readonly Finding[] {
  const { newtons, uncertainty, deviation, window } = weighing;
  const seconds = (window.end - window.start) / rateHz;
  const place = {
    at: "span",
    fromSeconds: window.start / rateHz,
    toSeconds: window.end / rateHz,
    decimals: 2,
  } as const;
  const figures = { quiet, seconds, uncertaintyFraction: uncertainty / newtons };
  const findings: Finding[] = [];
  if (seconds < settings.weighingShortSeconds) {
    findings.push(finding("weighing-short/too-short", "warning", figures, { place }));
  } else if (seconds < settings.weighingSeconds) {
    const wantedSeconds = settings.weighingSeconds;
    findings.push(finding("weighing-short/short", "warning", { ...figures, wantedSeconds }, { place }));
  }
  if (deviation > settings.weighingRestlessFraction * newtons) {
    findings.push(finding("weighing-restless", "warning", { test, quiet, deviationNewtons: deviation }, { place }));
  }
  return findings;
}
