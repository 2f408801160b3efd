import type { Limb, Side } from "../../../core/ground/limb.ts";
import { type MeasureId, measureEntry } from "../../../core/ground/measures/catalogue.ts";
import type { Measure } from "../../../core/measures/measure.ts";
import type { ComparableTrial } from "../../../core/sides/comparable-trial.ts";

/** A measure as the analysis would give it. */
export function makeMeasure(id: MeasureId, side: Limb, value: number, uncertainty?: number): Measure {
  return { id, side, value, unit: measureEntry(id).unit, ...(uncertainty === undefined ? {} : { uncertainty }) };
}

/** One single-leg countermovement jump with one height. */
export function singleLegTrial(limb: Side, heightMetres: number, changes: Partial<ComparableTrial> = {}) {
  return {
    test: "countermovementJump",
    limb,
    measures: [makeMeasure("jumpHeightImpulse", limb, heightMetres)],
    excluded: false,
    plateLimbs: ["both"],
    ...changes,
  } satisfies ComparableTrial;
}

/** One two-leg countermovement jump on two plates with one impulse a side. */
export function twoLegTrial(
  leftNewtonSeconds: number,
  rightNewtonSeconds: number,
  changes: Partial<ComparableTrial> = {},
  id: MeasureId = "brakingImpulse",
) {
  return {
    test: "countermovementJump",
    limb: "both",
    measures: [makeMeasure(id, "left", leftNewtonSeconds), makeMeasure(id, "right", rightNewtonSeconds)],
    excluded: false,
    plateLimbs: ["left", "right"],
    ...changes,
  } satisfies ComparableTrial;
}

/** One two-leg drop jump from 0.30 m on two plates with one impulse a side. */
export function twoLegDropJump(
  leadingLeg: Side | undefined,
  leftNewtonSeconds: number,
  rightNewtonSeconds: number,
  changes: Partial<ComparableTrial> = {},
  id: MeasureId = "brakingImpulse",
) {
  return twoLegTrial(
    leftNewtonSeconds,
    rightNewtonSeconds,
    { test: "dropJump", dropHeightMetres: 0.3, ...(leadingLeg === undefined ? {} : { leadingLeg }), ...changes },
    id,
  ) satisfies ComparableTrial;
}

/** What one single-leg drop jump gives, by measure. */
interface DropJumpValues {
  readonly jumpHeightFlightTime?: number;
  readonly reactiveStrengthIndex?: number;
  readonly contactTime?: number;
  readonly dropHeightEffective?: number;
  readonly peakLandingForce?: number;
}

/** One single-leg drop jump from 0.20 m. */
export function singleLegDropJump(limb: Side, values: DropJumpValues, changes: Partial<ComparableTrial> = {}) {
  return singleLegTrial(limb, 0, {
    test: "dropJump",
    dropHeightMetres: 0.2,
    measures: Object.entries(values).map(([id, value]) => makeMeasure(id as keyof DropJumpValues, limb, value)),
    ...changes,
  }) satisfies ComparableTrial;
}
