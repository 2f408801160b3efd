import type { Settings } from "../settings/settings.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { TrialEvent } from "./event.ts";
import { edgeUncertainty, type InputUncertainties, onsetUncertainty } from "./input-uncertainties.ts";
import { contactKeys, type EventKey, eventKeys, type JumpMotion } from "./jump-events.ts";
import { editsEvent, publishedEvent } from "./published-events.ts";
import { endOfUnweightingNoise, restNoise } from "./turning-point-noise.ts";
import { varyJump } from "./vary-jump.ts";

/** The events of a trial as they are published: the whole body's in order of time, then those of each limb. */
export function publishEvents(
  jump: JumpMotion,
  edits: readonly EventEdit[],
  noiseNewtons: number,
  inputs: InputUncertainties,
  settings: Settings,
): readonly TrialEvent[] {
  const { rateHz } = jump.motion.signal;
  const own = eventKeys.flatMap((key): TrialEvent[] => {
    const sample = jump.events[key];
    if (sample === undefined) return [];
    const { name, contactIndex } = publishedEvent(jump.test, key);
    const edited = edits.some((edit) => editsEvent(edit, jump.test, key));
    const uncertainty = eventUncertainty(jump, key, noiseNewtons, inputs, settings) / rateHz;
    return [
      {
        name,
        sample,
        time: sample / rateHz,
        from: edited ? "edited" : "detected",
        uncertainty,
        ...(contactIndex === undefined ? {} : { contactIndex }),
      },
    ];
  });
  const ofLimbs = jump.contacts.flatMap((contact) =>
    contactKeys.flatMap((key): TrialEvent[] => {
      const sample = contact[key];
      if (sample === undefined) return [];
      const { name, contactIndex } = publishedEvent(jump.test, key);
      const uncertainty = edgeUncertainty(inputs, key, contact.spreads) / rateHz;
      return [
        {
          name,
          sample,
          time: sample / rateHz,
          from: "detected",
          uncertainty,
          ...(contactIndex === undefined ? {} : { contactIndex }),
          side: contact.side,
        },
      ];
    }),
  );
  return [...own, ...ofLimbs, ...hopEvents(jump, edits, inputs)];
}

/** Touchdown and take-off of every contact of repeated hops, numbered from 1; the entry's take-off has no number. */
function hopEvents(jump: JumpMotion, edits: readonly EventEdit[], inputs: InputUncertainties): readonly TrialEvent[] {
  if (jump.hops === undefined) return [];
  const { rateHz } = jump.motion.signal;
  const event = (name: "touchdown" | "takeoff", sample: number | undefined, contactIndex?: number): TrialEvent[] => {
    if (sample === undefined) return [];
    const edited = edits.some((edit) => edit.name === name && edit.contactIndex === contactIndex);
    return [
      {
        name,
        sample,
        time: sample / rateHz,
        from: edited ? "edited" : "detected",
        uncertainty: edgeUncertainty(inputs, name, jump.spreads) / rateHz,
        ...(contactIndex === undefined ? {} : { contactIndex }),
      },
    ];
  };
  return [
    ...event("takeoff", jump.hops.entryTakeoff),
    ...jump.hops.contacts.flatMap((contact, index) => [
      ...event("touchdown", contact.touchdown, index + 1),
      ...event("takeoff", contact.takeoff, index + 1),
    ]),
  ];
}

/** Standard uncertainty of an event in samples. */
function eventUncertainty(
  jump: JumpMotion,
  key: EventKey,
  noiseNewtons: number,
  inputs: InputUncertainties,
  settings: Settings,
): number {
  if (key === "onset") return onsetUncertainty(inputs, jump);
  if (key === "contactTouchdown" || key === "takeoff" || key === "touchdown") {
    return edgeUncertainty(inputs, key, jump.spreads);
  }
  // Turning points follow from weight and velocity: moved by how far they move.
  const own = jump.events[key] ?? 0;
  const shifts = inputs.motion.map(
    (change) => (varyJump(jump, change, inputs.fixed, settings).events[key] ?? own) - own,
  );
  const ofNoise =
    key === "endOfUnweighting"
      ? endOfUnweightingNoise(jump, own, noiseNewtons, noiseNewtons, settings)
      : restNoise(jump, own, noiseNewtons, settings);
  return Math.hypot(...shifts, ofNoise, 1 / Math.sqrt(12));
}
