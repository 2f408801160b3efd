import type { LimbSignal } from "../events/detection.ts";
import type { JumpMotion } from "../events/jump-events.ts";
import type { Limb, MeasureSide } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";

/** A value before units and uncertainty are put to it. */
export interface RawMeasure {
  readonly id: MeasureId;
  readonly side: MeasureSide;
  readonly value: number;
  /** The part of its standard uncertainty that plate noise makes, in the measure's unit. */
  readonly noise: number;
}

/** One limb on its own plate in a two-leg trial. */
export interface MeasuredLimb {
  readonly signal: LimbSignal;
  /** Standard deviation of the plate's noise, newtons. */
  readonly noiseNewtons: number;
  /** Standard uncertainty of the plate's zero, newtons. */
  readonly zeroNewtons: number;
}

/** What the measures of a trial are made from. */
export interface MeasureContext {
  readonly jump: JumpMotion;
  /** The working limb, or both. */
  readonly limb: Limb;
  /** Left and right on two plates in a two-leg trial; empty otherwise. */
  readonly limbs: readonly MeasuredLimb[];
  /** Standard deviation of the total's noise, newtons. */
  readonly noiseNewtons: number;
  /** Standard uncertainty of the total's zero, newtons. It cancels in force above weight, not in weight or force. */
  readonly zeroNewtons: number;
  /** The hops that stand for a bout, by contact index from 1; fixed while inputs are varied. */
  readonly usedHops?: readonly number[];
}
