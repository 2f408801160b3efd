/** One entry of the settings catalogue: everything a reader needs to judge a number that is not in the recording. */
export interface NumberSetting {
  readonly default: number;
  /** UCUM unit, `1` for a pure number. */
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly reason: string;
}

/** A setting that is one of some words. */
export interface ChoiceSetting {
  readonly default: string;
  readonly choices: readonly string[];
  readonly reason: string;
}

/** Writes a numeric setting: default, unit, least, most, reason. */
export const number = (
  value: number,
  unit: string,
  minimum: number,
  maximum: number,
  reason: string,
): NumberSetting => ({
  default: value,
  unit,
  minimum,
  maximum,
  reason,
});
