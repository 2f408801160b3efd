import type { Settings } from "../settings.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { EventEdit, EventName } from "./event.ts";
import type { Weighing } from "./weigh.ts";

/** Standard uncertainties (k = 1) of what events and measures are made from. */
export interface InputUncertainties {
  readonly weightNewtons: number;
  /** Of the velocity at the start of integration, m/s. */
  readonly startVelocity: number;
  /** Of the event times, samples. */
  readonly onset: number;
  readonly takeoff: number;
  readonly touchdown: number;
  /** The window over which mean velocity is zero; absent where velocity is zero at onset. */
  readonly window?: SampleSpan;
  /** Events a person has placed: they stay where they are. */
  readonly fixed: ReadonlySet<EventName>;
}

/**
 * Uncertainties of a jump's inputs (METHODS §2, §3, CHECKS K). A contact event lies anywhere within a sample
 * (rectangular, 1/√12 of it) and carries a term for the unknown shape of the contact.
 */
export function inputUncertainties(
  weightNewtons: number,
  weighing: Weighing | undefined,
  edits: readonly EventEdit[],
  rateHz: number,
  settings: Settings,
): InputUncertainties {
  const sample = 1 / Math.sqrt(12);
  return {
    weightNewtons,
    startVelocity: weighing?.velocityUncertainty ?? settings.onsetVelocityUncertainty,
    onset: settings.onsetUncertaintySeconds * rateHz,
    takeoff: Math.hypot(sample, settings.takeoffShapeSeconds * rateHz),
    touchdown: Math.hypot(sample, settings.touchdownShapeSeconds * rateHz),
    ...(weighing === undefined ? {} : { window: weighing.window }),
    fixed: new Set(edits.map((edit) => edit.name)),
  };
}
