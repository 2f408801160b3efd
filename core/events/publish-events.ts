import { forceAt } from "../trial/force-signal.ts";
import { type EventEdit, type EventName, eventNames, type TrialEvent } from "./event.ts";
import type { InputUncertainties } from "./input-uncertainties.ts";
import type { JumpMotion } from "./jump-events.ts";
import { varyJump } from "./vary-jump.ts";

/** The events of a jump as they are published: the whole body's in order of time, then those of each limb. */
export function publishEvents(
  jump: JumpMotion,
  edits: readonly EventEdit[],
  noiseNewtons: number,
  inputs: InputUncertainties,
): readonly TrialEvent[] {
  const { rateHz } = jump.motion.signal;
  const own = eventNames.flatMap((name): TrialEvent[] => {
    const sample = jump.events[name];
    if (sample === undefined) return [];
    const edited = edits.some((edit) => edit.name === name);
    const uncertainty = eventUncertainty(jump, name, noiseNewtons, inputs) / rateHz;
    return [{ name, sample, time: sample / rateHz, from: edited ? "edited" : "detected", uncertainty }];
  });
  const ofLimbs = jump.contacts.flatMap((contact) =>
    (["takeoff", "touchdown"] as const).flatMap((name): TrialEvent[] => {
      const sample = contact[name];
      if (sample === undefined) return [];
      const uncertainty = inputs[name] / rateHz;
      return [{ name, sample, time: sample / rateHz, from: "detected", uncertainty, side: contact.side }];
    }),
  );
  return [...own, ...ofLimbs];
}

/** Standard uncertainty of an event in samples. */
function eventUncertainty(jump: JumpMotion, name: EventName, noiseNewtons: number, inputs: InputUncertainties): number {
  if (name === "onset" || name === "takeoff" || name === "touchdown") return inputs[name];
  // Turning points follow from weight and velocity: moved by how far they move.
  const own = jump.events[name] ?? 0;
  const shiftBy = (change: { readonly weightNewtons?: number; readonly startVelocity?: number }): number =>
    (varyJump(jump, change, inputs.window, inputs.fixed).events[name] ?? own) - own;
  const shifts = [shiftBy({ weightNewtons: inputs.weightNewtons }), shiftBy({ startVelocity: inputs.startVelocity })];
  if (name === "endOfUnweighting") {
    const slope = forceAt(jump.motion.signal, own + 0.5) - forceAt(jump.motion.signal, own - 0.5);
    if (slope > 0) shifts.push(noiseNewtons / slope);
  }
  return Math.hypot(...shifts, 1 / Math.sqrt(12));
}
