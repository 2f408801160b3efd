import type { EventName } from "../ground/event-name.ts";
import type { Settings } from "../settings/settings.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { Anchor, contactKeys, EdgeSpreads, JumpMotion } from "./jump-events.ts";
import type { JumpChange } from "./vary-jump.ts";
import type { MomentumBalance, Weighing, WeightEstimate } from "./weigh.ts";

/** Standard uncertainties (k = 1) of what events and measures are made from. */
export interface InputUncertainties {
  readonly weightNewtons: number;
  /** What moves weight, velocity and position where they are taken as known, each cause by itself; m/s and m. */
  readonly motion: readonly Pick<JumpChange, "weightNewtons" | "startVelocity" | "startPosition">[];
  /** Of the event times, samples. */
  readonly onset: number;
  readonly takeoff: number;
  readonly touchdown: number;
  /** Events a person has placed: they stay where they are. */
  readonly fixed: ReadonlySet<EventName>;
}

/**
 * Uncertainties of a trial's inputs (METHODS §2, §3, CHECKS K). A contact event whose flank was not read lies
 * anywhere within a sample (rectangular, 1/√12 of it) and carries the upper term for the unknown shape of the contact.
 */
export function inputUncertainties(
  weight: WeightEstimate,
  balance: MomentumBalance | undefined,
  still: Weighing | undefined,
  anchor: Anchor,
  edits: readonly EventEdit[],
  rateHz: number,
  settings: Settings,
): InputUncertainties {
  const sample = 1 / Math.sqrt(12);
  return {
    weightNewtons: weight.uncertainty,
    motion: motionCauses(weight, balance, still, anchor, settings),
    onset: settings.onsetUncertaintySeconds * rateHz,
    takeoff: Math.hypot(sample, settings.takeoffShapeSeconds * rateHz),
    touchdown: Math.hypot(sample, settings.touchdownShapeSeconds * rateHz),
    fixed: new Set(edits.map((edit) => edit.name)),
  };
}

/** Weight and velocity of one weighing have causes in common; a weight from elsewhere has its own. */
function motionCauses(
  weight: WeightEstimate,
  balance: MomentumBalance | undefined,
  still: Weighing | undefined,
  anchor: Anchor,
  settings: Settings,
): InputUncertainties["motion"] {
  // An unknown weight, and what follows from it, is no number that could be uncertain.
  if (Number.isNaN(weight.newtons)) return [];
  const isBalanced =
    balance !== undefined && balance.newtons === weight.newtons && balance.still.start === still?.window.start;
  const isOwn = still !== undefined && still.newtons === weight.newtons && still.uncertainty === weight.uncertainty;
  const causes = isBalanced
    ? balance.ends
    : isOwn && anchor.kind === "still"
      ? still.causes
      : [{ weightNewtons: weight.uncertainty }, { startVelocity: velocityUncertainty(still, anchor, settings) }];
  // Position is counted from an instant of swaying, not from the middle of the standing.
  return still === undefined ? causes : [...causes, { startPosition: still.positionUncertainty }];
}

function velocityUncertainty(still: Weighing | undefined, anchor: Anchor, settings: Settings): number {
  if (anchor.kind === "flight") return settings.flightVelocityUncertainty;
  return still?.velocityUncertainty ?? settings.onsetVelocityUncertainty;
}

/** Standard uncertainty of a contact event, samples: as its own flank tells it, else sampling and the upper shape term. */
export function edgeUncertainty(
  inputs: InputUncertainties,
  key: (typeof contactKeys)[number],
  spreads: EdgeSpreads | undefined,
): number {
  return spreads?.[key] ?? (key === "takeoff" ? inputs.takeoff : inputs.touchdown);
}

/** Standard uncertainty of the onset, samples: where it was detected, with what a gentle beginning adds. */
export function onsetUncertainty(inputs: InputUncertainties, jump: Pick<JumpMotion, "onsetDoubt">): number {
  return Math.hypot(inputs.onset, inputs.fixed.has("onset") ? 0 : (jump.onsetDoubt ?? 0));
}
