import type { Settings } from "../settings.ts";
import type { EventEdit, EventName } from "./event.ts";
import type { Anchor, contactKeys, EdgeSpreads } from "./jump-events.ts";
import type { Weighing } from "./weigh.ts";

/** Standard uncertainties (k = 1) of what events and measures are made from. */
export interface InputUncertainties {
  readonly weightNewtons: number;
  /** Of the velocity where it is taken as known, m/s. */
  readonly startVelocity: number;
  /** Of the event times, samples. */
  readonly onset: number;
  readonly takeoff: number;
  readonly touchdown: number;
  /** Events a person has placed: they stay where they are. */
  readonly fixed: ReadonlySet<EventName>;
}

/**
 * Uncertainties of a trial's inputs (METHODS §2, §3, CHECKS K). A contact event lies anywhere within a sample
 * (rectangular, 1/√12 of it) and carries a term for the unknown shape of the contact.
 */
export function inputUncertainties(
  weightNewtons: number,
  still: Weighing | undefined,
  anchor: Anchor,
  edits: readonly EventEdit[],
  rateHz: number,
  settings: Settings,
): InputUncertainties {
  const sample = 1 / Math.sqrt(12);
  return {
    weightNewtons,
    startVelocity: velocityUncertainty(still, anchor, settings),
    onset: settings.onsetUncertaintySeconds * rateHz,
    takeoff: Math.hypot(sample, settings.takeoffShapeSeconds * rateHz),
    touchdown: Math.hypot(sample, settings.touchdownShapeSeconds * rateHz),
    fixed: new Set(edits.map((edit) => edit.name)),
  };
}

function velocityUncertainty(still: Weighing | undefined, anchor: Anchor, settings: Settings): number {
  if (anchor.kind === "flight") return settings.flightVelocityUncertainty;
  return still?.velocityUncertainty ?? settings.onsetVelocityUncertainty;
}

/** Standard uncertainty of a contact event, samples: sampling and shape, and its own spread. */
export function edgeUncertainty(
  inputs: InputUncertainties,
  key: (typeof contactKeys)[number],
  spreads: EdgeSpreads | undefined,
): number {
  return Math.hypot(key === "takeoff" ? inputs.takeoff : inputs.touchdown, spreads?.[key] ?? 0);
}
