import type { Bearer } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { UcumUnit } from "../ground/units.ts";

/**
 * One number with everything that makes it one. A measure that could not be made is absent, never 0 or NaN. Its `side`
 * is `both` only in two-leg trials; a single-leg trial's measures carry the working limb. While nobody knows which foot
 * stood on which plate, a limb's value carries its `plate` instead.
 */
export type Measure = MeasuredValue & Bearer;

interface MeasuredValue {
  /** Public identifier (METHODS §5), a key of the measure catalogue. */
  readonly id: MeasureId;
  readonly value: number;
  readonly unit: UcumUnit;
  /** Standard uncertainty (k = 1) in the same unit, where one can be derived. */
  readonly uncertainty?: number;
}
