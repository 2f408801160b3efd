import type { JumpMotion } from "../events/jump-events.ts";
import type { Phase } from "../events/phases.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import { runningMean } from "../trial/segment-load.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** What disturbs a single-leg trial: the other foot on its plate, a swing of the free leg. */
export function singleLegFindings(
  context: MeasureContext,
  otherFoot: Float64Array | undefined,
  settings: Settings,
): readonly Finding[] {
  const limb: Limb = context.limb;
  if (limb === "both") return [];
  const { events, motion } = context.jump;
  const { rateHz, force } = motion.signal;
  const findings: Finding[] = [];
  const working = workingSpan(context.jump);
  if (working === undefined) return [];
  const from = Math.floor(working.from);
  const to = Math.ceil(working.to);
  const touching = otherFoot === undefined ? 0 : samplesAbove(otherFoot, from, to, settings.otherFootNewtons);
  if (touching >= settings.otherFootSeconds * rateHz && otherFoot !== undefined) {
    let most = 0;
    for (let index = from; index < to; index += 1) most = Math.max(most, otherFoot[index]!);
    findings.push(
      finding(
        "other-foot-touching/trial",
        "warning",
        {
          mostNewtons: most,
          seconds: touching / rateHz,
          during: events.takeoff === undefined && context.jump.hops === undefined ? "landing" : "before take-off",
        },
        { place: { at: "span", fromSeconds: from / rateHz, toSeconds: to / rateHz, decimals: 2 } },
      ),
    );
  }
  const dips =
    events.endOfUnweighting === undefined || events.takeoff === undefined
      ? 0
      : countDips(
          force,
          motion.startSample,
          Math.floor(events.takeoff),
          Math.max(2, Math.round(settings.quietBlockSeconds * rateHz)),
          motion.weightNewtons,
          settings.legSwingWeightFraction,
        );
  if (dips > 1) {
    findings.push(finding("leg-swing", "warning", { dips }));
  }
  return findings;
}

/**
 * Where one leg alone is to work: push or contact, the contacts of hops, the landing of a drop landing. The push begins
 * with the motion where its onset is not in the recording.
 */
function workingSpan({ events, hops, motion }: JumpMotion): Phase | undefined {
  const began = events.takeoff === undefined ? events.touchdown : motion.startSample;
  const from = hops?.contacts[0]?.touchdown ?? events.onset ?? events.contactTouchdown ?? began;
  const to =
    hops?.contacts.findLast((contact) => contact.takeoff !== undefined)?.takeoff ?? events.takeoff ?? events.landingEnd;
  return from === undefined || to === undefined ? undefined : { from, to };
}

function samplesAbove(force: Float64Array, from: number, to: number, newtons: number): number {
  let count = 0;
  for (let index = from; index < to; index += 1) if (force[index]! > newtons) count += 1;
  return count;
}

/**
 * Dips of the force, smoothed against single samples, that go deeper than `legSwingWeightFraction` of the weight and
 * rise again by as much. A push with two peaks, or a pause at the bottom, stays above the weight between them.
 */
function countDips(force: Float64Array, from: number, to: number, block: number, weight: number, part: number): number {
  const smooth = runningMean(force.subarray(from, to), block);
  let count = 0;
  let falling = true;
  let extreme = smooth[0] ?? 0;
  for (const newtons of smooth) {
    if (falling ? newtons < extreme : newtons > extreme) extreme = newtons;
    else if (Math.abs(newtons - extreme) > part * weight) {
      if (falling && extreme < (1 - part) * weight) count += 1;
      falling = !falling;
      extreme = newtons;
    }
  }
  return count;
}
