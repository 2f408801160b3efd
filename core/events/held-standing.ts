import { type Finding, finding } from "../ground/finding.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { steadyLoads } from "../trial/steady-loads.ts";
import type { Weighing } from "./weigh.ts";

/** Standing before a jump: how much it carries, and when. */
interface Standing {
  readonly newtons: number;
  readonly uncertainty: number;
  readonly window: SampleSpan;
}

/**
 * Says where something else carried a part of the athlete who stood before the jump, a hand on a rail as a rule, and let
 * go in the movement: standing before carries less than standing after, and the flight is that of the athlete after. By
 * the standing before, the speed of take-off would not be half the fall of the flight; counted back from after it is.
 * @param weighed the weighing before the jump; absent where that standing was taken for a movement
 */
export function heldStanding(
  total: ForceSignal,
  cut: JumpCut,
  test: TestKind,
  weighed: Weighing | undefined,
  after: Weighing,
  settings: Settings,
): Finding | undefined {
  const { flight, landed } = cut;
  const { rateHz, force } = total;
  const before = weighed ?? steadyBefore(total, cut, settings);
  if (before === undefined || !landed) return undefined;
  const missing = after.newtons - before.newtons;
  const joint = settings.heldWeightSd * Math.hypot(before.uncertainty, after.uncertainty);
  if (missing <= Math.max(joint, settings.heldWeightFraction * after.newtons)) return undefined;
  const seconds = (flight.end - flight.start) / rateHz;
  const fall = (settings.gravity * seconds) / 2;
  const gained = (from: number, to: number, newtons: number): number => {
    let impulse = 0;
    for (let index = from; index < to; index += 1) impulse += force[index]! - newtons;
    return (settings.gravity * impulse) / rateHz / newtons;
  };
  const forward = gained(before.window.end, flight.start, before.newtons);
  const back = -gained(flight.start, after.window.start, after.newtons);
  if (forward <= back || Math.abs(forward / fall - 1) - Math.abs(back / fall - 1) <= settings.heldFlightFraction) {
    return undefined;
  }
  const heightOf = (speed: number): number => (speed * speed) / 2 / settings.gravity;
  const { start, end } = before.window;
  return finding(
    "held-while-weighed",
    "warning",
    {
      test,
      beforeNewtons: before.newtons,
      afterNewtons: after.newtons,
      heightByWeightMetres: heightOf(forward),
      heightByFlightMetres: heightOf(fall),
    },
    { place: { at: "span", fromSeconds: start / rateHz, toSeconds: end / rateHz, decimals: 2 } },
  );
}

/** The last steady load before the flight, which no flight bore out as standing. */
function steadyBefore(
  total: ForceSignal,
  { span, contact, flight }: JumpCut,
  settings: Settings,
): Standing | undefined {
  const within = { start: Math.max(span.start, contact.start), end: flight.start };
  const least = settings.bodyMassMinimumKg * settings.gravity;
  const last = steadyLoads(total, within, settings).findLast((each) => each.newtons > least);
  return last === undefined ? undefined : { newtons: last.newtons, uncertainty: 0, window: last.span };
}
