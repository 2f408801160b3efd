import { formatValue } from "../../core/ground/format-number.ts";
import type { UcumUnit } from "../../core/ground/units.ts";

interface QuantityProps {
  readonly value: number | undefined;
  readonly uncertainty?: number | undefined;
  readonly unit: UcumUnit;
  /** The unit is left out where a heading beside the value says it. */
  readonly withUnit?: boolean;
}

/** A value, its standard uncertainty in muted ink and its unit, small. */
export function Quantity({ value, uncertainty, unit, withUnit = false }: QuantityProps) {
  const text = formatValue(value, uncertainty, unit);
  return (
    <span className="quantity">
      {text.value}
      {text.uncertainty !== "" && <span className="uncertainty"> ± {text.uncertainty}</span>}
      {withUnit && text.symbol !== "" && value !== undefined && <span className="unit"> {text.symbol}</span>}
    </span>
  );
}
