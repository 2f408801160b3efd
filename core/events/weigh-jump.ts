import { type Finding, finding } from "../finding.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import { weighingWindow } from "../trial/weighing-window.ts";
import { balanceMomentum, plateNoise, type Weighing, type WeightEstimate, weigh } from "./weigh.ts";

/** The weighing of one jump, with what is to be said about it. */
export interface JumpWeighing {
  /** Quiet standing before the dip; absent when nobody stood still there. */
  readonly weighing?: Weighing;
  /** Momentum balance with quiet standing after the landing; absent where that is missing or disagrees. */
  readonly balance?: WeightEstimate;
  readonly findings: readonly Finding[];
}

/**
 * Weighs the athlete over the quiet standing before a jump and, where it is quiet after the landing too, by momentum
 * balance (METHODS §2).
 */
export function weighJump(total: ForceSignal, cut: JumpCut, settings: Settings): JumpWeighing {
  const window = weighingWindow(total.force, total.rateHz, cut.quietBefore, settings);
  if (window === undefined) return { findings: [] };
  const weighing = weigh(total.force, total.rateHz, window, plateNoise(total.force, window), settings);
  const seconds = (window.end - window.start) / total.rateHz;
  const where = `${(window.start / total.rateHz).toFixed(2)} s to ${(window.end / total.rateHz).toFixed(2)} s`;
  const findings: Finding[] = [];
  const after = weighAfter(total, cut, settings);
  const agrees =
    after !== undefined &&
    Math.abs(after.newtons / weighing.newtons - 1) <= settings.weightToleranceSession &&
    seconds >= settings.quietSecondsAfter;
  const balance = agrees ? balanceMomentum(total.force, total.rateHz, weighing, after, settings) : undefined;
  const percent = ((100 * weighing.uncertainty) / weighing.newtons).toFixed(2);
  if (seconds < settings.weighingShortSeconds) {
    findings.push(
      finding(
        "weighing-short",
        "warning",
        `Quiet standing before the jump lasts only ${seconds.toFixed(2)} s: body weight is uncertain by ${percent} %, and every number that rests on it is coarse.`,
        "Record again with two seconds of quiet standing before the jump; do not decide on this trial.",
        { where },
      ),
    );
  } else if (seconds < settings.weighingSeconds) {
    findings.push(
      finding(
        "weighing-short",
        "warning",
        `Quiet standing before the jump lasts ${seconds.toFixed(2)} s instead of ${settings.weighingSeconds.toFixed(1)} s: body weight is uncertain by ${percent} %.`,
        "Have the athlete stand still for two seconds before the next jump.",
        { where },
      ),
    );
  }
  if (weighing.deviation > settings.weighingRestlessFraction * weighing.newtons) {
    findings.push(
      finding(
        "weighing-restless",
        "warning",
        `Force varies by ${weighing.deviation.toFixed(0)} N (standard deviation) while the athlete is weighed.`,
        "Have the athlete stand still, hands on hips, before the next jump.",
        { where },
      ),
    );
  }
  return { weighing, ...(balance === undefined ? {} : { balance }), findings };
}

/** The steadiest part of the quiet standing after the landing; undefined where it is too short. */
function weighAfter(total: ForceSignal, cut: JumpCut, settings: Settings): Weighing | undefined {
  const { quietAfter } = cut;
  if (quietAfter.end - quietAfter.start < settings.quietSecondsAfter * total.rateHz) return undefined;
  const window = weighingWindow(total.force, total.rateHz, [quietAfter], settings);
  if (window === undefined) return undefined;
  return weigh(total.force, total.rateHz, window, plateNoise(total.force, window), settings);
}
