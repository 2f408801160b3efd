import { positionAt } from "../events/kinematics.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { MeasureContext } from "./raw-measure.ts";

/**
 * A countermovement before the rise of a squat jump (METHODS §6): force dips, or the centre of mass sinks from its hold.
 * @param leastLoadFraction least force between hold and push as a part of body weight
 */
export function squatFindings(
  context: MeasureContext,
  leastLoadFraction: number,
  settings: Settings,
): readonly Finding[] {
  const { test, motion, anchor, events } = context.jump;
  const { onset, takeoff } = events;
  if (testFacts(test).start !== "hold" || onset === undefined || takeoff === undefined) return [];
  const { rateHz } = motion.signal;
  const from = anchor.kind === "still" ? anchor.window.end - 1 : Math.ceil(onset);
  let lowest = 0;
  for (let index = from; index <= takeoff; index += 1) lowest = Math.min(lowest, positionAt(motion, index));
  const sunk = positionAt(motion, from) - lowest;
  const dip = 1 - leastLoadFraction;
  if (dip <= settings.squatDipFraction && sunk <= settings.squatDipMetres) return [];
  return [
    finding(
      "dip-in-squat-jump",
      "warning",
      { dipFraction: dip, sunkMetres: sunk },
      { place: { at: "span", fromSeconds: from / rateHz, toSeconds: takeoff / rateHz, decimals: 2 } },
    ),
  ];
}
