import { roundTo } from "../ground/format-number.ts";
import type { Side } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { type GainDifference, gainDifference, type PlateGains, platesCompared } from "../weight/plate-gains.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import { twoSidedT } from "./student-t.ts";
import { mean } from "./trial-statistic.ts";

/** Measures of single-leg trials that are forces of the plate; heights and times are free of its gain. */
const singleLegForces: ReadonlySet<string> = new Set(["peakLandingForce", "brakingNetImpulse", "propulsionNetImpulse"]);

/** Of the net impulse of a limb a gain moves what is gross, so that the part of it is larger. */
const grossOf: Readonly<Partial<Record<MeasureId, MeasureId>>> = {
  brakingLimbNetImpulse: "brakingImpulse",
  propulsionLimbNetImpulse: "propulsionImpulse",
};

/** How much more the plates of one side read than those of the other, as it acts on an index (METHODS §2). */
export interface PlateShareOfIndex extends GainDifference {
  /** The same as it acts on this index: a part of a limb's net impulse is a smaller part of its gross one. */
  readonly onIndex: GainDifference;
}

/**
 * The gain of the plates in one comparison; undefined where it cancels: heights and times of single-leg trials, or both
 * sides measured on the same plate.
 * @param trials those that the comparison rests on
 */
export function plateShare(
  measure: MeasureId,
  legs: "both" | "single",
  trials: readonly ComparableTrial[],
  firstSide: Side,
  gains: PlateGains,
): PlateShareOfIndex | undefined {
  if (legs === "single" && !singleLegForces.has(measure)) return undefined;
  const plateOf = (side: Side): readonly string[] =>
    trials.flatMap(({ limb, carriedBy }) => {
      const plate = limb === "both" || limb === side ? carriedBy?.[side] : undefined;
      return plate === undefined ? [] : [plate];
    });
  const secondSide = firstSide === "left" ? "right" : "left";
  const [first, second] = [plateOf(firstSide), plateOf(secondSide)];
  if (first.length === 0 || second.length === 0) return undefined;
  const apart = gainDifference(gains, platesCompared(first, second));
  if (apart === undefined) return undefined;
  const times = grossOverNet(measure, trials, [firstSide, secondSide]);
  return { ...apart, onIndex: { difference: times * apart.difference, uncertainty: times * apart.uncertainty } };
}

/** Mean of gross over net impulse of both limbs; 1 for every measure that is not a limb's net impulse. */
function grossOverNet(measure: MeasureId, trials: readonly ComparableTrial[], sides: readonly Side[]): number {
  const gross = grossOf[measure];
  if (gross === undefined) return 1;
  const ratios = sides.flatMap((side) => {
    const values = (id: MeasureId): readonly number[] =>
      trials.flatMap((trial) =>
        trial.measures.filter((each) => each.id === id && each.side === side).map(({ value }) => value),
      );
    const [whole, net] = [values(gross), values(measure)];
    return whole.length === 0 || net.length === 0 ? [] : [mean(whole) / mean(net)];
  });
  return ratios.length === 0 ? 1 : Math.abs(mean(ratios));
}

/** What an index may be off by for the plates alone: the difference that is not corrected, with what is not known. */
function uncorrected({ difference, uncertainty }: GainDifference): number {
  return Math.hypot(difference, uncertainty);
}

/**
 * Limits of a ratio with the plates' share: on the logarithmic scale half-width' = √(half-width² + (q·u)²) each side, q
 * the normal quantile. The gain is common to all trials, so it does not average out; values are never corrected for it.
 */
export function widenedByPlates(
  limits: { readonly low: number; readonly high: number },
  ratio: number,
  share: PlateShareOfIndex | undefined,
  confidence: number,
): { readonly low: number; readonly high: number } {
  if (share === undefined) return limits;
  const own = twoSidedT(confidence, Number.POSITIVE_INFINITY) * uncorrected(share.onIndex);
  const low =
    limits.low > 0
      ? ratio * Math.exp(-Math.hypot(Math.log(ratio / limits.low), own))
      : // Without a logarithm: the same on the scale of the ratio.
        ratio - Math.hypot(ratio - limits.low, ratio * own);
  return { low, high: ratio * Math.exp(Math.hypot(Math.log(limits.high / ratio), own)) };
}

/** What the plates have in an interval, a sentence. */
export function plateShareWords(share: PlateShareOfIndex): string {
  const percent = (part: number): string => roundTo(100 * part, 2);
  const { difference, uncertainty } = share;
  return Math.abs(difference) > uncertainty
    ? `In it, the plates read ${percent(Math.abs(difference))} ± ${percent(uncertainty)} % apart.`
    : `In it, what the plates may read apart (± ${percent(uncorrected(share))} %).`;
}
